/**
 * `tsx electron/package/sbom.ts`: writes what we ship, from the lock file and the packages as they are installed:
 * `assets/licences/sbom.cdx.json` (CycloneDX 1.6) and `assets/licences/third-party.txt` (each licence's own text).
 */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

type Locked = {
  readonly version?: string
  readonly resolved?: string
  readonly integrity?: string
  readonly license?: string
  readonly dev?: boolean
  readonly devOptional?: boolean
  readonly optional?: boolean
}

export type Shipped = {
  readonly name: string
  readonly version: string
  readonly licence: string
  readonly integrity: string | null
  readonly text: string
}

/** Shipped though it is a development package: the window's own program. */
const ALSO_SHIPPED = 'node_modules/electron'

export function shippedPackages(root: string): readonly Shipped[] {
  const lock: unknown = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'))
  const packages = (lock as { packages: Readonly<Record<string, Locked>> }).packages
  return Object.entries(packages)
    .filter(([path, locked]) => path === ALSO_SHIPPED || (path !== '' && isShipped(locked)))
    .map(([path, locked]) => shipped(root, path, locked))
    .filter(
      (each, at, all) => all.findIndex(({ name, version }) => name === each.name && version === each.version) === at,
    )
    .sort((a, b) => (a.name === b.name ? compare(a.version, b.version) : compare(a.name, b.name)))
}

/** How licences begin, for packages that state theirs only in a file. */
export function licenceByWords(text: string): string {
  if (/Permission is hereby granted, free of charge, to any person obtaining a copy/.test(text)) return 'MIT'
  if (!/Redistribution and use in source and binary forms/.test(text)) return 'not stated'
  return /Neither the name/.test(text) ? 'BSD-3-Clause' : 'BSD-2-Clause'
}

const isShipped = ({ dev, devOptional, optional }: Locked): boolean =>
  dev !== true && devOptional !== true && optional !== true

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function shipped(root: string, path: string, { version, license, integrity }: Locked): Shipped {
  const manifest: unknown = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'))
  const { license: stated } = manifest as { license?: unknown }
  const text = licenceText(join(root, path))
  return {
    name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
    version: version ?? '',
    licence: typeof stated === 'string' ? stated : (license ?? licenceByWords(text)),
    integrity: integrity ?? null,
    text,
  }
}

/** The package's own licence file; where it has none, that is said. */
function licenceText(folder: string): string {
  const name = readdirSync(folder).find((each) => /^(licen[cs]e|copying)(\.|-|$)/i.test(each))
  if (name === undefined || !existsSync(join(folder, name))) return '(The package contains no licence file.)'
  return readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim()
}

/** The same bytes for the same lock: no clock, no chance. */
export function bomOf(
  product: { readonly name: string; readonly version: string },
  packages: readonly Shipped[],
): string {
  const components = packages.map(({ name, version, licence, integrity }) => ({
    type: 'library',
    'bom-ref': purlOf(name, version),
    name,
    version,
    purl: purlOf(name, version),
    licenses: [/\s|\(/.test(licence) ? { expression: licence } : { license: { id: licence } }],
    ...(integrity === null ? {} : { hashes: hashesOf(integrity) }),
  }))
  const serial = uuidOf(JSON.stringify(components))
  return `${JSON.stringify(
    {
      $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
      bomFormat: 'CycloneDX',
      specVersion: '1.6',
      serialNumber: `urn:uuid:${serial}`,
      version: 1,
      metadata: {
        component: {
          type: 'application',
          'bom-ref': `${product.name}@${product.version}`,
          name: product.name,
          version: product.version,
          licenses: [{ license: { id: 'MIT' } }],
        },
      },
      components,
      dependencies: [
        { ref: `${product.name}@${product.version}`, dependsOn: components.map((component) => component['bom-ref']) },
      ],
    },
    null,
    2,
  )}\n`
}

const purlOf = (name: string, version: string): string => `pkg:npm/${name.replace(/^@/, '%40')}@${version}`

const ALGORITHMS: Readonly<Record<string, string>> = {
  sha512: 'SHA-512',
  sha384: 'SHA-384',
  sha256: 'SHA-256',
  sha1: 'SHA-1',
}

function hashesOf(integrity: string): readonly { readonly alg: string; readonly content: string }[] {
  const [algorithm = '', content = ''] = integrity.split(/-(.*)/s)
  return [{ alg: ALGORITHMS[algorithm] ?? algorithm, content: Buffer.from(content, 'base64').toString('hex') }]
}

/** A name-based UUID, so that the same content has the same number (RFC 9562, version 8). */
function uuidOf(content: string): string {
  const hex = createHash('sha256').update(content).digest('hex')
  const variant = ((Number.parseInt(hex.slice(16, 18), 16) & 0x3f) | 0x80).toString(16)
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(18, 20)}-${hex.slice(20, 32)}`
}

export function licenceList(packages: readonly Shipped[]): string {
  const head = 'What Kipstow ships besides its own code, each under its own licence.\n'
  const overview = packages.map(({ name, version, licence }) => `${name} ${version}: ${licence}`).join('\n')
  const texts = packages
    .map(({ name, version, text }) => `${'='.repeat(72)}\n${name} ${version}\n\n${text}\n`)
    .join('\n')
  return `${head}\n${overview}\n\n${texts}`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
  const product = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { name: string; version: string }
  const packages = shippedPackages(root)
  const folder = join(root, 'assets/licences')
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, 'sbom.cdx.json'), bomOf(product, packages))
  writeFileSync(join(folder, 'third-party.txt'), licenceList(packages))
}
