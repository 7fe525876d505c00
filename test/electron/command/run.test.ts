/** The headless command on real files: what it writes, says, and ends with. */
import { spawnSync } from 'node:child_process'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { runCommand } from '../../../electron/command/run.ts'
import { planSchema } from '../../../shared/host/plan-schema/plan.ts'
import { smallTrip } from '../../support/small-trip.ts'

const root = join(import.meta.dirname, '../../..')
const base = mkdtempSync(join(tmpdir(), 'kipstow-command-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))

let folder = base
beforeEach(() => {
  folder = mkdtempSync(join(base, 'case-'))
})

type Heard = {
  readonly code: number
  readonly said: string
  readonly complained: string
  readonly progress: readonly string[]
}

async function plan(...given: string[]): Promise<Heard> {
  const said: string[] = []
  const complained: string[] = []
  const progress: string[] = []
  const code = await runCommand(given, {
    folder,
    say: (text) => said.push(text),
    complain: (text) => complained.push(text),
    progress: (line) => progress.push(line),
  })
  return { code, said: said.join('\n'), complained: complained.join('\n'), progress }
}

const put = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, content)
  return path
}

const FILES = ['calendar.ics', 'checklist.pdf', 'load.pdf', 'night.pdf', 'plan.json', 'pocket.html']

describe('a trip that holds', () => {
  it('ends with 0, says how it stands, shows progress, and writes its six files where the user stands, over those of before', async () => {
    const path = put('small.trip.json', smallTrip())
    const before = readFileSync(path)
    mkdirSync(join(folder, 'small.plan'))
    put('small.plan/plan.json', 'of last year')
    const heard = await plan('small.trip.json', '--seconds', '1')
    expect(heard.complained).toBe('')
    expect(heard.code).toBe(0)
    expect(heard.said).toMatch(/^Bats by the quarry\n {2}Holds\. /)
    for (const part of ['Load', 'Night', 'Next leg', 'Checklist', 'Mind']) expect(heard.said).toContain(`\n\n${part}\n`)
    expect(heard.said).toContain('  From Schieferhalde pitches (invented): ')
    expect(heard.said).not.toContain('Falls short')
    expect(heard.said).not.toMatch(/undefined|NaN|\{[a-zA-Z0-9]+\}/)
    expect(heard.progress.length).toBeGreaterThan(1)
    expect(heard.progress.at(-1)).toBe('')
    const out = join(folder, 'small.plan')
    expect(readdirSync(out).sort()).toEqual(FILES)
    expect(heard.said).toContain(`\n\nWritten to ${out}: `)
    expect(planSchema.safeParse(JSON.parse(readFileSync(join(out, 'plan.json'), 'utf8'))).error).toBeUndefined()
    for (const card of ['load', 'night', 'checklist'])
      expect(
        readFileSync(join(out, `${card}.pdf`))
          .subarray(0, 5)
          .toString(),
      ).toBe('%PDF-')
    expect(readFileSync(join(out, 'pocket.html'), 'utf8')).toMatch(/^<!doctype html>/i)
    expect(readFileSync(join(out, 'calendar.ics'), 'utf8')).toMatch(/^BEGIN:VCALENDAR\r\n/)
    expect(readFileSync(path)).toEqual(before)
  })

  it('is never written over through a link: told with what holds, in one line where quiet was asked', async () => {
    const trip = smallTrip()
    put('mine.json', trip)
    mkdirSync(join(folder, 'o'))
    symlinkSync(join(folder, 'mine.json'), join(folder, 'o/plan.json'))
    const heard = await plan('mine.json', '--out', 'o', '--seed', '7', '--seconds', '1', '--quiet')
    expect(heard.code).toBe(2)
    expect(heard.said).toMatch(/^Holds\. [^\n]+\.$/)
    expect(heard.progress).toEqual([])
    expect(heard.complained).toContain(`Planned, but not written to ${join(folder, 'o')}`)
    expect(heard.complained).toContain('is the trip itself. Choose another folder with --out.')
    expect(readFileSync(join(folder, 'mine.json'), 'utf8')).toBe(trip)
  })
})

describe('a trip that falls short', () => {
  it('ends with 1, says no with each reason and what would help, and writes its files all the same', async () => {
    put(
      'heavy.json',
      smallTrip((trip) => {
        trip.vehicle.masses['permittedG'] = 2_240_000
        trip.preferences['language'] = 'de'
      }),
    )
    const heard = await plan('heavy.json', '--seconds', '1')
    expect(heard.code).toBe(1)
    expect(heard.said).toMatch(/\n\nReicht nicht\n {2}– [^\n]*kg/)
    expect(heard.said).toMatch(/\n\nWas hilft\n {2}/)
    expect(readdirSync(join(folder, 'heavy.plan')).sort()).toEqual(FILES)
  })
})

describe('a trip that is refused', () => {
  it.each([
    ['cut short', '{"format": "kipstow-trip"', /Line 1, column 26 \(byte 25\).*Correct/],
    ['empty', '', /empty \(0 bytes\)\. Choose/],
    ['not a trip', '{"a": 1}', /“format”.*Choose/],
    ['of a newer version', smallTrip((trip) => (trip['version'] = 99)), /99.*1\. Update/],
    [
      'with a wrong kind of value',
      smallTrip((trip) => (trip.title = 7 as unknown as string)),
      /\(title\) says 7; .*Correct/,
    ],
    [
      'with a field left out',
      smallTrip((trip) => delete trip['vehicle' as string]),
      /\(vehicle\) is missing; .*Add it/,
    ],
    [
      'with a field nobody knows',
      smallTrip((trip) => (trip['extra'] = 1)),
      /\(extra\) is 1, but that is not a field.*Correct its name or remove it/,
    ],
  ])(
    '%s: ends with 2, names field, value and remedy, writes nothing, leaves it as it is',
    async (_what, content, sentence) => {
      const path = put('bad.json', content)
      const heard = await plan('bad.json')
      expect(heard.code).toBe(2)
      expect(heard.said).toBe('')
      expect(heard.complained.split('\n')[0]).toBe(`Refused: ${path}`)
      expect(heard.complained).toMatch(sentence)
      expect(readFileSync(path, 'utf8')).toBe(content)
      expect(readdirSync(folder)).toEqual(['bad.json'])
    },
  )

  it('lists thirty problems and counts the rest', async () => {
    put(
      'many.json',
      smallTrip((trip) =>
        Object.assign(trip, Object.fromEntries(Array.from({ length: 40 }, (_, at) => [`x${at}`, at]))),
      ),
    )
    const heard = await plan('many.json')
    expect(heard.code).toBe(2)
    const lines = heard.complained.split('\n')
    expect(lines).toHaveLength(32)
    expect(lines.at(-1)).toMatch(/^ {2}and \d+ more$/)
  })

  it('is not there, or is a folder: says so', async () => {
    expect(await plan('missing.json')).toMatchObject({
      code: 2,
      complained: expect.stringMatching(/missing\.json is not there\. Check/),
    })
    expect(await plan('.')).toMatchObject({
      code: 2,
      complained: expect.stringMatching(/is a folder, not a trip\. Choose/),
    })
  })
})

describe('a folder that cannot be written', () => {
  it('is told before planning: a file, a file above it', async () => {
    put('small.json', smallTrip())
    const file = put('afile', 'mine')
    for (const out of ['afile', 'afile/deeper/still']) {
      const heard = await plan('small.json', '--out', out)
      expect(heard).toMatchObject({ code: 2, said: '', progress: [] })
      expect(heard.complained).toContain(`${file} is a file, not a folder. Choose another folder.`)
    }
    expect(readFileSync(file, 'utf8')).toBe('mine')
  })
})

describe('what goes wrong in the planner itself', () => {
  it('ends with 3, says whose fault it is, and never looks like a plan that falls short', async () => {
    put('small.json', smallTrip())
    const now = vi.spyOn(Date, 'now').mockImplementation(() => {
      throw new RangeError('no clock')
    })
    const heard = await plan('small.json')
    now.mockRestore()
    expect(heard.code).toBe(3)
    expect(heard.complained).toMatch(/^The planner itself failed: RangeError: no clock\. .*Your file is untouched/)
    expect(existsSync(join(folder, 'small.plan'))).toBe(false)
  })
})

describe('without a trip', () => {
  it('shows how it is used: as an answer to --help, as a complaint to nothing', async () => {
    const help = await plan('--help')
    expect(help).toMatchObject({ code: 0, complained: '' })
    for (const word of ['--out', '--seed', '--seconds', '--quiet', '--schema', 'Ends with 0'])
      expect(help.said).toContain(word)
    const none = await plan()
    expect(none).toMatchObject({ code: 2, said: '' })
    expect(none.complained).toMatch(/^Name the trip to plan\.\n\nnpm run -s plan/)
  })
})

describe('the program', () => {
  const main = join(root, 'electron/command/main.ts')
  const run = (folderOfUser: string, ...given: string[]): ReturnType<typeof spawnSync> =>
    spawnSync(process.execPath, ['--import', 'tsx', main, ...given], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, INIT_CWD: folderOfUser, LANG: 'en_GB.UTF-8' },
      maxBuffer: 1e8,
    })

  it('resolves paths from where the user stands, and hands the number on', () => {
    put('cut.json', '{')
    const ended = run(folder, 'cut.json')
    expect(ended.status).toBe(2)
    expect(String(ended.stderr)).toContain(`Refused: ${join(folder, 'cut.json')}`)
    expect(ended.stdout).toBe('')
  })
})
