/** Numbers as they are written on wood: of an order, and of each body where it has several. No two things of a list may share one. */
interface Numbered {
  readonly number: string;
  readonly quantity: number;
}

/** `2001`, or `2001-1`, `2001-2`, … */
export const bodyNumbers = ({ number, quantity }: Numbered): readonly string[] =>
  quantity === 1 ? [number] : Array.from({ length: quantity }, (_, i) => `${number}-${i + 1}`);

/** Small and capital letters are one letter: so they are in codes, on wood and in the names of files on some machines. */
const folded = (number: string): string => number.toUpperCase();

/** Remembers what was given, and says which earlier order a new one would be taken for. */
export function makeTaken(): { readonly clash: (order: Numbered) => string | undefined } {
  const orders = new Map<string, Numbered>();
  /** Of orders whose own number reads as that of a body: by the number before the last dash. */
  const likeBodies = new Map<string, { readonly body: number; readonly order: Numbered }[]>();
  return {
    clash: (order) => {
      const number = folded(order.number);
      const [, of, body] = /^(.+)-([1-9]\d{0,3})$/.exec(number) ?? [];
      const whole = of === undefined ? undefined : orders.get(of);
      const other =
        orders.get(number) ??
        (whole && whole.quantity > 1 && whole.quantity >= Number(body) ? whole : undefined) ??
        (order.quantity > 1 ? likeBodies.get(number)?.find((one) => one.body <= order.quantity)?.order : undefined);
      if (other) return other.number;
      orders.set(number, order);
      if (of !== undefined) likeBodies.set(of, [...(likeBodies.get(of) ?? []), { body: Number(body), order }]);
      return undefined;
    },
  };
}
