import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const off = process.env['CHECK_OFF'] ?? '';

export default defineConfig({
  root: join(import.meta.dirname, '..'),
  plugins: [
    {
      name: 'a check switched off',
      enforce: 'pre',
      transform(code, id) {
        if (!id.split('?')[0]?.endsWith('src/check/checks/all.generated.ts')) return undefined;
        const line = new RegExp(`^import (\\w+) from '\\./${off}\\.ts';\\n`, 'm').exec(code);
        if (!line) throw new Error(`no check ${off}`);
        return code.replace(line[0], '').replace(new RegExp(`^\\s*${line[1]!},\\n`, 'm'), '');
      },
    },
  ],
  test: { include: ['tests/check/**/*.test.ts', 'tests/cases.test.ts'], testTimeout: 60_000 },
});
