/** A change notice as lines for a screen. */
import { sizeText } from './change-marks.ts';
import { becauseText, codesText, whoseText } from './change-notice.ts';
import type { CardTold, ChangeTold, GivenTold, NoticeTold } from './change-notice.ts';
import type { Speech } from './speech.ts';

export function changeText(notice: NoticeTold, talk: Speech): string {
  const { models, given, stations, untouched, elsewhere, underWay } = notice;
  const whole = models.filter(({ is }) => is === 'new' || is === 'gone');
  const revised = models.flatMap(({ title, old, new: now }) =>
    old !== undefined && now !== undefined && old !== now
      ? [talk.phrase('change-notice.revisions', { model: title, old, new: now })]
      : [],
  );
  const blocks = [
    [talk.phrase('change-notice.against', { old: notice.old, new: notice.new })],
    ...revised.map((line) => [line]),
    ...whole.map(({ title, is }) => [`${title}: ${talk.phrase(`change-notice.${is}-model`)}`]),
    ...given.map(({ of, changes }) => [
      `${talk.phrase('change-notice.given')}: ${of ?? talk.phrase('change-notice.plant')}`,
      ...changes.flatMap((change) => givenLines(change, talk)),
    ]),
    ...stations.map(({ name, cards, untouched: keep }) => [
      talk.name(name),
      ...cards.flatMap((card) => cardLines(card, talk)),
      ...(keep.length > 0 ? [`  ${talk.phrase('change-notice.untouched-here', { models: keep.join(', ') })}`] : []),
    ]),
    ...(untouched.length > 0
      ? [
          [
            talk.phrase('change-notice.untouched-stations', {
              stations: untouched.map((one) => talk.name(one)).join(', '),
            }),
          ],
        ]
      : []),
    ...(elsewhere > 0 ? [[talk.phrase('change-notice.elsewhere', { count: String(elsewhere) })]] : []),
    ...underWay.map((one) => [
      `${talk.phrase('change-notice.under-way')}: ${whoseText(one, talk)}`,
      `  ${talk.phrase('change-notice.before', { station: talk.name(one.before) })}`,
      ...one.rows.flatMap(({ past, lines }) => [
        `  ${talk.phrase('change-notice.past', { station: talk.plain(past) })}`,
        ...lines.map((line) => `    ${begun(talk.plain(line))}`),
      ]),
    ]),
  ];
  const none =
    stations.length > 0 ? [] : [talk.phrase(given.length > 0 ? 'change-notice.record-only' : 'change-notice.nothing')];
  return `${[...blocks, ...(none.length > 0 && whole.length === 0 ? [none] : [])].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function givenLines({ oldAt, newAt, tag, ...change }: GivenTold, talk: Speech): readonly string[] {
  const at = [...new Set([oldAt, newAt].flatMap((one) => one ?? []))].join(' -> ');
  // The id of a line is written as it is.
  const lines = [talk.plain(change.line), ...changeLines(change, talk).slice(1)].map((line) => `  ${line}`);
  const where = talk.phrase(`change-notice.tag-${tag}`);
  return [...lines, `      ${[where, ...(at === '' ? [] : [at])].join('; ')}`];
}

function cardLines(card: CardTold, talk: Speech): readonly string[] {
  const lines = card.changes.flatMap((change) => {
    const because =
      change.because.length > 0 ? [talk.phrase('change-notice.because', { given: becauseText(change.because) })] : [];
    return [...changeLines(change, talk), ...because.map((one) => `    ${one}`)].map((line) => `    ${line}`);
  });
  return [`  ${whoseText(card, talk)}: ${card.codes.map((codes) => codesText(codes, talk)).join('; ')}`, ...lines];
}

const changeLines = ({ line, also }: Pick<ChangeTold, 'line' | 'also'>, talk: Speech): readonly string[] => [
  begun(talk.plain(line)),
  ...(also.length > 0 ? [`    ${begun(sizeText(also, talk))}`] : []),
];

const begun = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
