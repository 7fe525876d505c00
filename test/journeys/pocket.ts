/** The pocket sheet as a file in a real browser: nothing fetched, ticks kept and carried over as text, red only at night, readable without its script. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Page } from 'playwright-core'
import { parsePocketText, pocketSheet } from '../../shared/cards/index.ts'
import { createText } from '../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../support/cards-plan.ts'

const demand = (holds: boolean, what: string): void => {
  if (!holds) throw new Error(what)
}

export async function pocketSheetOnAPhone(page: Page): Promise<string> {
  const trip = cardsTrip()
  const html = pocketSheet({ trip, plan: cardsPlan(trip), text: createText('en', 'metric') })
  const folder = await mkdtemp(join(tmpdir(), 'kipstow-pocket-'))
  const file = join(folder, 'pocket.html')
  await writeFile(file, html)
  const fetched: string[] = []
  page.on('request', (request) => {
    if (request.url() !== pathToFileURL(file).href) fetched.push(request.url())
  })
  try {
    await page.setViewportSize({ width: 390, height: 844 })
    await page.goto(pathToFileURL(file).href)
    const box = page.locator('input[data-step]').first()
    await box.check()
    await page.locator('input[data-field=volts]').first().fill('226,5')
    await page.locator('input[data-field=volts]').first().blur()
    await page.reload()
    demand(await box.isChecked(), 'a tick is not remembered')
    await carriesOver(page)
    await staysRed(page)
    const narrow = await page.evaluate(
      () =>
        [...document.querySelectorAll('a,button,.steps label,.theme,.fields input,textarea')].filter(
          (one) => one.getBoundingClientRect().height < 44,
        ).length,
    )
    demand(narrow === 0, `${narrow} targets are lower than 44 px`)
    demand((await page.evaluate(() => document.documentElement.scrollWidth)) <= 390, 'the page is wider than the phone')
    demand(fetched.length === 0, `fetched ${fetched.join(', ')}`)
    return `${Math.round(html.length / 1024)} KB`
  } finally {
    await rm(folder, { recursive: true })
  }
}

/** What it writes is what the planner reads, and it reads its own text on an empty phone. */
async function carriesOver(page: Page): Promise<void> {
  await page.click('#export')
  const written = await page.locator('#talk').inputValue()
  const read = parsePocketText(written)
  demand(
    read.ok && read.value.ticks.length === 1 && read.value.readings[0]?.volts === 226.5,
    `not read back: ${written}`,
  )
  await page.evaluate(() => localStorage.clear())
  await page.reload()
  demand(!(await page.locator('input[data-step]').first().isChecked()), 'ticks outlive a cleared phone')
  await page.locator('#talk').fill(written)
  await page.click('#import')
  demand(await page.locator('input[data-step]').first().isChecked(), 'a pasted tick is not shown')
  demand(
    (await page.locator('input[data-field=volts]').first().inputValue()) === '226.5',
    'a pasted reading is not shown',
  )
}

/** In the night-red theme no visible colour has any green or blue in it. */
async function staysRed(page: Page): Promise<void> {
  await page.check('#night-red')
  const stray = await page.evaluate(() => {
    const names = ['color', 'backgroundColor', 'borderTopColor', 'fill', 'stroke'] as const
    const found = new Set<string>()
    for (const element of document.querySelectorAll('body, body *')) {
      const style = getComputedStyle(element)
      for (const name of names) {
        if (name === 'borderTopColor' && style.borderTopWidth === '0px') continue
        const [, green = '0', blue = '0'] = style[name].match(/\d+/g) ?? []
        if (green !== '0' || blue !== '0') found.add(`${element.tagName} ${name} ${style[name]}`)
      }
    }
    return [...found]
  })
  demand(stray.length === 0, `not red: ${stray.slice(0, 3).join('; ')}`)
}
