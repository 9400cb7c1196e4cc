/** platen trace MODEL [FACT | --all]: where a number comes from, down to lines, plant rows and published sources. */
import type { Command } from 'commander';
import { checkAll } from '../../compile.ts';
import type { CheckedModel } from '../../compile.ts';
import type { Fact, Facts } from '../../facts/facts.ts';
import { offer } from '../../findings/nearest.ts';
import { where } from '../../findings/render.ts';
import { showValue } from '../../facts/show.ts';
import { busy } from '../busy.ts';
import type { Common, Io } from '../io.ts';
import { EXIT } from '../io.ts';
import { pick } from '../pick.ts';

type Options = Common & { all?: boolean; json?: boolean; hand?: 'right' | 'left' };
type Texts = ReadonlyMap<string, string>;

export default function add(program: Command, io: Io, done: (code: number) => void): void {
  program
    .command('trace')
    .description('show where a number comes from')
    .argument('<model>', 'id of a model')
    .argument('[fact]', 'id of a fact; the list of them where none is named')
    .option('--all', 'every fact')
    .option('--json', 'as JSON')
    .option('--hand <hand>', 'right or left', 'right')
    .action((model: string, fact: string | undefined, options: Options) => done(trace(model, fact, options, io)));
}

function trace(name: string, id: string | undefined, options: Options, io: Io): number {
  const checked = busy(io, 'Reading', () => checkAll(io.host(options.root), options.on));
  const model = pick([name], checked.models, io)?.[0];
  if (!model) return EXIT.usage;
  const facts = factsOf(model, options.hand ?? 'right');
  if (!facts) {
    io.err(`${name} has no ${options.hand} hand, or cannot be read: see platen check ${name}.\n`);
    return EXIT.errors;
  }
  const all = facts.all();
  const wanted = id === undefined ? all : all.filter((fact) => fact.id === id);
  if (wanted.length === 0) {
    io.err(
      `${name} has no fact "${id}". ${offer(
        id!,
        all.map((fact) => fact.id),
      )}\n`,
    );
    return EXIT.usage;
  }
  const { texts } = checked.workspace;
  if (options.json)
    io.out(
      `${JSON.stringify(
        closure(wanted, facts).map((fact) => asJson(fact, texts)),
        undefined,
        2,
      )}\n`,
    );
  else if (id === undefined && !options.all) for (const fact of all) io.out(`${fact.id}  ${showFact(fact)}\n`);
  else for (const fact of wanted) io.out(`${tree(fact, facts, texts, '').join('\n')}\n`);
  return EXIT.good;
}

const factsOf = (model: CheckedModel, hand: string): Facts | undefined =>
  model.hands.find(({ subject }) => subject.hand === hand)?.facts;

const showFact = (fact: Fact): string =>
  fact.state.ok ? showValue(fact.state.value) : `not to be had: ${fact.state.missing.join(', ')} missing`;

/** The fact and everything it came from, each once. */
function closure(from: readonly Fact[], facts: Facts): Fact[] {
  const seen = new Map<string, Fact>();
  const visit = (fact: Fact | undefined): void => {
    if (!fact || seen.has(fact.id)) return;
    seen.set(fact.id, fact);
    for (const input of fact.inputs) visit(facts.fact(input));
  };
  from.forEach(visit);
  return [...seen.values()];
}

function asJson(fact: Fact, texts: Texts) {
  const { id, label, origin, inputs } = fact;
  const from = 'place' in origin ? { kind: origin.kind, at: where(origin.place, texts) } : origin;
  return { id, label, value: showFact(fact), from, inputs };
}

function tree(fact: Fact, facts: Facts, texts: Texts, indent: string): string[] {
  const { origin } = fact;
  const head = `${indent}${fact.id} = ${showFact(fact)}`;
  if ('place' in origin) return [`${head}   ${where(origin.place, texts)}`];
  if (origin.kind === 'published') return [`${head}   ${origin.source} (${origin.certainty})`];
  const source =
    origin.source.kind === 'definition'
      ? ''
      : origin.source.kind === 'practice'
        ? ` [${origin.source.note}]`
        : ` [${origin.source.text}]`;
  return [
    head,
    `${indent}  ${origin.formula}${source}`,
    ...fact.inputs.flatMap((id) => {
      const input = facts.fact(id);
      return input ? tree(input, facts, texts, `${indent}    `) : [`${indent}    ${id}: missing`];
    }),
  ];
}
