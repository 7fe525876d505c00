/** What a released build is made of. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { FuseV1Options } from '@electron/fuses'
import { describe, expect, it } from 'vitest'
import config from '../../electron/package/electron-builder.config.ts'
import { BUILDER_FUSES, FUSES } from '../../electron/package/fuses.ts'
import { bomOf, licenceByWords, licenceList, shippedPackages } from '../../electron/package/sbom.ts'

const root = join(import.meta.dirname, '../..')
const read = (path: string): string => readFileSync(join(root, path), 'utf8').replaceAll('\r\n', '\n')

describe('the fuses', () => {
  it('are the eight that Electron knows, each set as the security list wants it (19)', () => {
    const known = Object.keys(FuseV1Options).filter((name) => Number.isNaN(Number(name)))
    for (const name of Object.keys(FUSES)) expect(known).toContain(name)
    expect(FUSES).toEqual({
      RunAsNode: false,
      EnableCookieEncryption: true,
      EnableNodeOptionsEnvironmentVariable: false,
      EnableNodeCliInspectArguments: false,
      EnableEmbeddedAsarIntegrityValidation: true,
      OnlyLoadAppFromAsar: true,
      LoadBrowserProcessSpecificV8Snapshot: false,
      GrantFileProtocolExtraPrivileges: false,
    })
    const lowered = Object.fromEntries(
      Object.entries(FUSES).map(([name, on]) => [name.charAt(0).toLowerCase() + name.slice(1), on]),
    )
    expect(config.electronFuses).toEqual(lowered)
    expect(BUILDER_FUSES).toEqual(lowered)
  })
})

describe('the release description', () => {
  it('names files that are there, and no source, test or map', () => {
    for (const icon of [config.linux.icon, config.mac.icon, config.win.icon])
      expect(existsSync(join(root, icon))).toBe(true)
    expect(config.asar).toBe(true)
    expect(config.publish).toBeNull()
    expect(config.files.join()).not.toMatch(/(^|,)(test|shared|renderer|electron)\//)
  })
})

describe('the list of what is shipped', () => {
  const packages = shippedPackages(root)
  const product = JSON.parse(read('package.json'))

  it('holds every package of the lock that is not for development, and Electron', () => {
    const names = packages.map(({ name }) => name)
    for (const name of [...Object.keys(product.dependencies), 'electron']) expect(names).toContain(name)
    for (const name of ['vite', 'vitest', 'typescript', 'highs']) expect(names).not.toContain(name)
    for (const { name, licence } of packages)
      expect(licence, name).toMatch(/MIT|ISC|BSD|Apache-2\.0|OFL-1\.1|0BSD|MPL-2\.0|BlueOak|Unlicense|CC0|Zlib/)
  })

  it('is the one checked in; run `tsx electron/package/sbom.ts` where it is not', () => {
    expect(read('assets/licences/sbom.cdx.json')).toBe(bomOf(product, packages))
    expect(read('assets/licences/third-party.txt')).toBe(licenceList(packages))
  })
})

describe('what belongs to a release', () => {
  it('claims the endings of trips on every system, and starts the built shell', () => {
    const [trip] = config.fileAssociations
    expect(trip?.ext).toEqual(['kipstow', 'trip.json'])
    const { main } = JSON.parse(read('package.json'))
    expect(main).toBe('dist/electron/main.js')
    expect(config.files).toContain('dist/electron/**')
    expect(Object.keys(config)).toEqual(expect.arrayContaining(['linux', 'mac', 'win']))
  })
})

describe('a licence that is only a text', () => {
  it('is told by the words that every copy of it has', () => {
    const bsd = 'Redistribution and use in source and binary forms, with or without modification, are permitted'
    expect(licenceByWords('Permission is hereby granted, free of charge, to any person obtaining a copy of this')).toBe(
      'MIT',
    )
    expect(licenceByWords(bsd)).toBe('BSD-2-Clause')
    expect(licenceByWords(`${bsd}. Neither the name of the holder`)).toBe('BSD-3-Clause')
    expect(licenceByWords('All rights reserved')).toBe('not stated')
  })
})
