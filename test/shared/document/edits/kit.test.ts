/** Edits of the kit, down to the mentions that an edit must not leave behind. */
import { describe, expect, it } from 'vitest'
import { edited, one, refused, sample } from './edited.ts'

const bin = one(sample.kit.bins, 'food-box')

describe('bins', () => {
  it('are added empty at the end, with a new id', () => {
    const trip = edited([{ kind: 'add-bin', bin: { ...bin, id: 'tool-box', name: 'Tool box' } }])
    expect(trip.kit.bins.map((each) => each.id)).toEqual([...sample.kit.bins.map((each) => each.id), 'tool-box'])
    expect(trip.kit.pieces).toBe(sample.kit.pieces)
  })

  it('are duplicated empty and free beside their pattern', () => {
    const trip = edited([
      { kind: 'lock', unitId: 'kitchen-box', lock: { layout: 'drive', bayId: 'load-bay' } },
      { kind: 'duplicate-bin', binId: 'kitchen-box' },
    ])
    expect(trip.kit.bins.map((each) => [each.id, each.locks.length])).toEqual([
      ['recording-crate', 0],
      ['arrival-box', 0],
      ['night-bag', 0],
      ['kitchen-box', 1],
      ['kitchen-box-2', 0],
      ['food-box', 0],
    ])
    expect(trip.kit.pieces.filter((piece) => piece.binId === 'kitchen-box-2')).toEqual([])
  })

  it('that go are no longer kept together with, or apart from, anything', () => {
    const trip = edited([
      { kind: 'set-value', path: ['kit', 'pieces', 2, 'belongsWith'], value: ['food-box', 'flask'] },
      { kind: 'set-value', path: ['kit', 'pieces', 3, 'apartFrom'], value: ['food-box'] },
      { kind: 'remove-bin', binId: 'food-box' },
    ])
    expect(one(trip.kit.pieces, 'bag-imke').belongsWith).toEqual(['flask'])
    expect(one(trip.kit.pieces, 'bag-jorin').apartFrom).toEqual([])
  })
})

describe('pieces', () => {
  it('that go are named by no night, bed, lesson or company any more', () => {
    const trip = edited([
      { kind: 'set-value', path: ['kit', 'pieces', 2, 'belongsWith'], value: ['lead'] },
      { kind: 'add-lesson', lesson: { id: 'l1', text: 'Too much', unusedPieceIds: ['lead', 'stools'] } },
      { kind: 'add-lesson', lesson: { id: 'l2', text: 'Cold feet' } },
      { kind: 'remove-piece', pieceId: 'lead' },
    ])
    expect(one(trip.nights, 'night-2').hookup).not.toHaveProperty('extensionPieceId')
    expect(one(trip.nights, 'night-2').hookup?.adapterPieceId).toBe('adapter')
    expect(trip.checklist.lessons).toEqual([
      { id: 'l1', text: 'Too much', unusedPieceIds: ['stools'] },
      { id: 'l2', text: 'Cold feet' },
    ])
    expect(JSON.stringify(trip)).not.toContain('"lead"')
  })

  it('that go leave a night without a post as it was', () => {
    const before = edited([{ kind: 'set-value', path: ['nights', 0, 'hookup'] }])
    const trip = edited([{ kind: 'remove-piece', pieceId: 'wool-blanket' }], before)
    expect(one(trip.nights, 'night-1')).toEqual({
      ...one(before.nights, 'night-1'),
      beddingPieceIds: ['mattress-left', 'mattress-right', 'bag-imke', 'bag-jorin', 'pillow-imke', 'pillow-jorin'],
    })
  })

  it('stay at home as spare, and come along again', () => {
    const home = edited([{ kind: 'set-spare', pieceId: 'stools', spare: true }])
    expect(one(home.kit.pieces, 'stools').spare).toBe(true)
    expect(one(edited([{ kind: 'set-spare', pieceId: 'stools', spare: false }], home).kit.pieces, 'stools')).toEqual(
      one(sample.kit.pieces, 'stools'),
    )
  })
})

describe('a fixed place', () => {
  const locked = edited([
    { kind: 'lock', unitId: 'flask', lock: { layout: 'bed', bayId: 'console' } },
    { kind: 'lock', unitId: 'flask', lock: { layout: 'drive', bayId: 'console' } },
    { kind: 'lock', unitId: 'night-bag', lock: { layout: 'drive', bayId: 'load-bay' } },
  ])

  it('is given to bins as to pieces', () => {
    expect(one(locked.kit.bins, 'night-bag').locks).toEqual([{ layout: 'drive', bayId: 'load-bay' }])
    const freed = edited([{ kind: 'unlock', unitId: 'night-bag' }], locked)
    expect(one(freed.kit.bins, 'night-bag').locks).toEqual([])
  })

  it('is freed in one layout and stays in the other', () => {
    const freed = edited([{ kind: 'unlock', unitId: 'flask', layout: 'bed' }], locked)
    expect(one(freed.kit.pieces, 'flask').locks).toEqual([{ layout: 'drive', bayId: 'console' }])
  })
})

describe('many pieces at once', () => {
  const first = one(sample.kit.pieces, 'flask')
  const copies = ['flask-of-tea', 'flask-of-soup'].map((id) => ({ ...first, id, locks: [] }))

  it('are added together, or not at all where one id is taken', () => {
    const trip = edited([{ kind: 'add-pieces', pieces: copies }])
    expect(trip.kit.pieces.slice(-2).map(({ id }) => id)).toEqual(['flask-of-tea', 'flask-of-soup'])
    expect(refused({ kind: 'add-pieces', pieces: [...copies, first] })).toMatchObject({
      code: 'edit-id-taken',
      params: { id: 'flask' },
    })
    expect(refused({ kind: 'add-pieces', pieces: [...copies, ...copies] }).code).toBe('id-twice')
  })

  it('are removed together with every mention of them: the same trip as one after the other', () => {
    const pieceIds = ['flask', 'bag-imke', 'pillow-imke']
    const kept = edited([
      { kind: 'set-value', path: ['kit', 'pieces', 3, 'belongsWith'], value: ['flask', 'bag-imke'] },
      { kind: 'set-value', path: ['kit', 'pieces', 3, 'apartFrom'], value: ['pillow-imke'] },
    ])
    const trip = edited([{ kind: 'remove-pieces', pieceIds }], kept)
    expect(trip).toEqual(
      edited(
        pieceIds.map((pieceId) => ({ kind: 'remove-piece', pieceId })),
        kept,
      ),
    )
    expect(trip.kit.pieces).toHaveLength(sample.kit.pieces.length - 3)
    expect(one(trip.kit.pieces, 'bag-jorin')).toMatchObject({ belongsWith: [], apartFrom: [] })
    for (const id of pieceIds) expect(JSON.stringify(trip)).not.toContain(`"${id}"`)
  })

  it('get the same access or state, and all else of them and of the others stays', () => {
    const trip = edited([
      { kind: 'change-pieces', pieceIds: ['flask', 'bag-imke'], change: { access: ['seldom'] } },
      { kind: 'change-pieces', pieceIds: ['flask'], change: { atNight: 'outside' } },
    ])
    const { access: _access, atNight: _state, ...rest } = one(trip.kit.pieces, 'flask')
    const { access: _before, atNight: _stateBefore, ...restBefore } = first
    expect([_access, _state]).toEqual([['seldom'], 'outside'])
    expect(rest).toEqual(restBefore)
    expect(trip.kit.pieces.filter((piece, at) => piece !== sample.kit.pieces[at]).map(({ id }) => id)).toEqual(
      sample.kit.pieces.map(({ id }) => id).filter((id) => id === 'flask' || id === 'bag-imke'),
    )
  })

  it.each([
    { kind: 'remove-pieces', pieceIds: ['flask', 'kite'] },
    { kind: 'change-pieces', pieceIds: ['flask', 'kite'], change: { atNight: 'outside' } },
  ] as const)('stay as they are where one is not there: $kind', (edit) => {
    expect(refused(edit)).toEqual({ code: 'edit-target-missing', path: [], params: { what: 'piece', id: 'kite' } })
  })
})
