/** Blocks of a card as HTML for the pocket sheet. Every word is escaped here. */
import { assertNever } from '../../result/index.ts'
import { drawingToSvg } from '../drawing-svg.ts'
import { escapeMarkup } from '../escape.ts'
import type { Block } from '../model.ts'

export const blocksToHtml = (blocks: readonly Block[]): string => blocks.map(blockToHtml).join('\n')

function blockToHtml(block: Block): string {
  switch (block.kind) {
    case 'heading': {
      // Below a section's h2, and no level left out.
      const level = Math.min(block.level + 2, 4)
      return `<h${level}>${escapeMarkup(block.text)}</h${level}>`
    }
    case 'paragraph': {
      const words = escapeMarkup(block.text)
      const inner =
        block.tone === 'strong' ? `<b>${words}</b>` : block.tone === 'small' ? `<small>${words}</small>` : words
      return `<p>${inner}</p>`
    }
    case 'notice':
      return `<p class="notice"><b>${escapeMarkup(block.label)}</b>${escapeMarkup(block.text)}</p>`
    case 'figures':
      return `<div class="figures">${block.items.map((item) => `<div><b>${escapeMarkup(item.value)}</b><small>${escapeMarkup(item.label)}</small></div>`).join('')}</div>`
    case 'table':
      return tableToHtml(block)
    case 'drawing':
      return drawingToSvg(block, { ink: 'currentColor', paper: 'var(--paper)', sizing: 'fluid' })
    case 'together':
      return blocksToHtml(block.blocks)
    case 'beside':
      return block.columns.map(blocksToHtml).join('')
    case 'ticks':
    case 'blanks':
    case 'page-break':
      return ''
    default:
      return assertNever(block)
  }
}

function tableToHtml({ columns, rows }: Extract<Block, { kind: 'table' }>): string {
  const headed = columns.some((column) => column.title !== '')
  const cell = (tag: 'td' | 'th', words: string, index: number): string => {
    const column = columns[index]
    const names = [
      ...(column?.align === 'right' ? ['right'] : []),
      ...(tag === 'td' && column?.strong === true ? ['strong'] : []),
    ]
    const attribute = names.length === 0 ? '' : ` class="${names.join(' ')}"`
    return `<${tag}${attribute}>${escapeMarkup(words)}</${tag}>`
  }
  const head = headed ? `<tr>${columns.map((column, index) => cell('th', column.title, index)).join('')}</tr>` : ''
  const body = rows.map((row) => `<tr>${row.map((words, index) => cell('td', words, index)).join('')}</tr>`).join('\n')
  return `<div class="wide" tabindex="0"><table>${head}${body}</table></div>`
}
