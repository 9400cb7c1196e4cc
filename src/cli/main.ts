#!/usr/bin/env node
/** The process: the only file that meets its arguments, its output and its exit code. */
import { workspaceHost } from '../host/workspace.ts';
import type { Io } from './io.ts';
import { run } from './run.ts';

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY,
  host: (root) => workspaceHost(root),
};
process.exitCode = await run(process.argv.slice(2), io);
