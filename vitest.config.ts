import vue from '@vitejs/plugin-vue'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          environment: 'node',
          include: ['test/{shared,electron,truth,properties,reliability,security,architecture}/**/*.test.ts'],
          // Figures that take minutes: `npm run test:deep`.
          exclude: process.env['KIPSTOW_DEEP'] === undefined ? ['**/*.deep.test.ts'] : [],
          testTimeout: 900_000,
        },
      },
      {
        plugins: [vue()],
        test: {
          name: 'window',
          environment: 'happy-dom',
          include: ['test/renderer/**/*.test.ts'],
          testTimeout: 60_000,
        },
      },
    ],
  },
})
