#!/usr/bin/env node
/** The process: the only file that meets its arguments, its output and its exit code. */
import { workspaceHost } from '../host/workspace.ts';
import type { Io } from './io.ts';
import { run } from './run.ts';

// Whoever reads the output may have seen enough, as `head` has: what is still to come goes nowhere, and that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

const io: Io = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  watched: process.stderr.isTTY,
  host: (root) => workspaceHost(root),
};
process.exitCode = await run(process.argv.slice(2), io);
