/** A second plan beside the first, asked for and kept by keys alone, then taken back. */
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expectText, openPlanner, planSettled } from './steps.ts'

const WAIT_MS = 60_000

export async function whatIf(page: Page, base: string, out: string | null): Promise<void> {
  await openPlanner(page, base)
  await planSettled(page)
  const before = await page.locator('.verdict-line').textContent()
  await page.keyboard.press('w')
  const dialog = page.getByRole('dialog')
  const amount = dialog.getByLabel('Colder by')
  await amount.fill('8')
  await amount.press('Tab')
  await dialog.getByRole('button', { name: 'Compare' }).press('Enter')
  await dialog.getByRole('table').waitFor({ timeout: WAIT_MS })
  await expectText(page, '.what-if-table', /As planned.*Then/)
  if (out !== null) await page.screenshot({ path: join(out, 'what-if.png') })
  await dialog.getByRole('button', { name: 'Plan with this change' }).press('Enter')
  await page.waitForFunction((was) => document.querySelector('.verdict-line')?.textContent !== was, before, {
    timeout: WAIT_MS,
  })
  await expectText(page, '.toasts', /Kept: 8/)
  await page.keyboard.press('Control+z')
  await page.waitForFunction((was) => document.querySelector('.verdict-line')?.textContent === was, before, {
    timeout: WAIT_MS,
  })
}
