/** Writes the zod schema of `Plan` from its TypeScript types, one file for each folder that declares some. */
import { basename, dirname, join } from 'node:path'
import ts from 'typescript'

const HEADER = '/** Generated from the types of PLACE by `tsx test/support/plan-schema/main.ts`; do not edit. */'

type Module = { readonly name: string; readonly lines: string[]; readonly uses: Map<string, Set<string>> }

/** File name to content, relative to `shared/host/plan-schema/`. */
export function generatePlanSchema(root: string): Map<string, string> {
  const entry = join(root, 'shared/plan/types.ts')
  const program = ts.createProgram([entry], {
    strict: true,
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    types: [],
    skipLibCheck: true,
  })
  const checker = program.getTypeChecker()
  const source = program.getSourceFile(entry)
  if (source === undefined) throw new Error('shared/plan/types.ts is missing')
  const plan = checker.getExportsOfModule(moduleSymbol(checker, source)).find((symbol) => symbol.name === 'Plan')
  if (plan === undefined) throw new Error('type Plan is missing')
  const writer = new Writer(checker)
  writer.expression(checker.getDeclaredTypeOfSymbol(plan), undefined)
  return writer.files()
}

function moduleSymbol(checker: ts.TypeChecker, source: ts.SourceFile): ts.Symbol {
  const symbol = checker.getSymbolAtLocation(source)
  if (symbol === undefined) throw new Error(`${source.fileName} is no module`)
  return symbol
}

class Writer {
  private readonly checker: ts.TypeChecker
  private readonly modules = new Map<string, Module>()
  private readonly home = new Map<string, string>()

  constructor(checker: ts.TypeChecker) {
    this.checker = checker
  }

  files(): Map<string, string> {
    const files = new Map<string, string>()
    for (const module of this.modules.values()) {
      const imports = [...module.uses].map(
        ([from, names]) => `import { ${[...names].sort().join(', ')} } from './${from}.ts'`,
      )
      files.set(
        `${module.name}.ts`,
        [
          HEADER.replace('PLACE', `shared/${module.name}`),
          ...(module.lines.some((line) => line.includes('ZodType<Utc>'))
            ? ["import type { Utc } from '../../units/index.ts'"]
            : []),
          "import { z } from '../zod.ts'",
          ...imports.sort(),
          '',
          ...module.lines,
          '',
        ].join('\n'),
      )
    }
    return files
  }

  /** A zod expression for a type, seen from the module that uses it. */
  expression(type: ts.Type, from: Module | undefined): string {
    const alias = type.aliasSymbol
    const place = alias?.declarations?.[0]?.getSourceFile().fileName
    if (
      alias !== undefined &&
      place !== undefined &&
      /\/shared\/\w+\/\w+\.ts$/.test(place) &&
      type.aliasTypeArguments === undefined
    ) {
      return this.named(alias.name, basename(dirname(place)), type, from)
    }
    return this.shape(type, from)
  }

  private named(name: string, folder: string, type: ts.Type, from: Module | undefined): string {
    const constant = `${name.slice(0, 1).toLowerCase()}${name.slice(1)}Schema`
    const module = this.module(folder)
    if (!this.home.has(constant)) {
      this.home.set(constant, folder)
      const body = name === 'Utc' ? 'z.number() as unknown as z.ZodType<Utc>' : this.shape(type, module)
      const comment =
        name === 'Utc' ? '/** Seconds since 1970 UTC: the one place where the brand is minted from JSON. */\n' : ''
      module.lines.push(`${comment}export const ${constant} = ${body}\n`)
    }
    if (this.home.get(constant) !== folder) throw new Error(`two types are called ${name}`)
    if (from !== undefined && from !== module) {
      const uses = from.uses.get(folder) ?? new Set()
      from.uses.set(folder, uses.add(constant))
    }
    return constant
  }

  private module(name: string): Module {
    const module = this.modules.get(name) ?? { name, lines: [], uses: new Map() }
    this.modules.set(name, module)
    return module
  }

  private shape(type: ts.Type, from: Module | undefined): string {
    const { checker } = this
    if (type.flags & ts.TypeFlags.String) return 'z.string()'
    if (type.flags & ts.TypeFlags.Number) return 'z.number()'
    if (type.flags & ts.TypeFlags.Boolean) return 'z.boolean()'
    if (type.flags & ts.TypeFlags.Null) return 'z.null()'
    if (type.isStringLiteral() || type.isNumberLiteral()) return `z.literal(${JSON.stringify(type.value)})`
    if (type.flags & ts.TypeFlags.BooleanLiteral) return `z.literal(${checker.typeToString(type)})`
    if (type.isUnion()) return this.union(type, from)
    if (checker.isTupleType(type)) {
      const parts = checker.getTypeArguments(type as ts.TypeReference).map((part) => this.expression(part, from))
      return `z.tuple([${parts.join(', ')}])`
    }
    if (checker.isArrayType(type)) {
      const [element] = checker.getTypeArguments(type as ts.TypeReference)
      if (element === undefined) throw new Error('array of nothing')
      return `z.array(${this.expression(element, from)})`
    }
    const index = checker.getIndexInfoOfType(type, ts.IndexKind.String)
    if (index !== undefined) return `z.record(z.string(), ${this.expression(index.type, from)})`
    if (type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) return this.object(type, from)
    throw new Error(`no schema for ${checker.typeToString(type)}`)
  }

  private union(type: ts.UnionType, from: Module | undefined): string {
    const isNull = (part: ts.Type): boolean => (part.flags & ts.TypeFlags.Null) !== 0
    const kept = type.types.filter((part) => !isNull(part) && !(part.flags & ts.TypeFlags.Undefined))
    const nullable = type.types.some(isNull) ? '.nullable()' : ''
    const booleans = kept.filter((part) => part.flags & ts.TypeFlags.BooleanLiteral)
    const others = kept.filter((part) => !(part.flags & ts.TypeFlags.BooleanLiteral))
    const parts = [
      ...(booleans.length === 2 ? ['z.boolean()'] : booleans.map((part) => this.shape(part, from))),
      ...(others.length > 1 && others.every((part) => part.isStringLiteral())
        ? [`z.enum([${others.map((part) => JSON.stringify((part as ts.StringLiteralType).value)).join(', ')}])`]
        : others.map((part) => this.expression(part, from))),
    ]
    const [only] = parts
    return parts.length === 1 && only !== undefined ? `${only}${nullable}` : `z.union([${parts.join(', ')}])${nullable}`
  }

  private object(type: ts.Type, from: Module | undefined): string {
    const fields = this.checker.getPropertiesOfType(type).map((property) => {
      const body = this.expression(this.checker.getTypeOfSymbol(property), from)
      return `  ${property.name}: ${property.flags & ts.SymbolFlags.Optional ? `z.exactOptional(${body})` : body},`
    })
    return `z.object({\n${fields.join('\n')}\n})`
  }
}
