/** The second phase: all facts of one hand of one model, computed when asked for. */
import type { Facts } from '../facts/facts.ts';
import { makeFacts } from '../facts/facts.ts';
import type { Subject } from '../facts/subject.ts';
import { all } from './rules/all.generated.ts';

export const derive = (subject: Subject): Facts => makeFacts(all.flatMap((rule) => rule(subject)));
