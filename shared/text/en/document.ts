/** English sentences: document. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const document = {
  'problem.file-empty': 'The file is empty (0 bytes). Choose another file, or a backup of this one.',
  'problem.file-too-large': 'The file is {sizeMiB} MiB; at most {limitMiB} MiB is read. Choose a trip file.',
  'problem.file-utf16': 'The file is written as UTF-16. Save it as UTF-8 in your editor and open it again.',
  'problem.file-not-utf8': 'Byte {offset} is not UTF-8 text. Save the file as UTF-8, or open a backup.',
  'problem.json-unreadable':
    'Line {line}, column {column} (byte {offset}): found {found} where {expected} should stand. Correct that place, or open a backup.',
  'problem.json-key-twice':
    'Line {line}, column {column}: “{key}” is given twice in the same place. Remove one of the two.',
  'problem.json-forbidden-key':
    'Line {line}, column {column}: the name “{key}” is not allowed in a trip file. Remove it.',
  'problem.json-number-range': 'Line {line}, column {column}: {value} is too large for any number. Correct it.',
  'problem.json-broken-character': 'Line {line}, column {column}: the text holds half a character. Type it again.',
  'problem.json-too-deep':
    'Line {line}, column {column}: more than {limit} levels lie inside each other. This is no trip file of ours; open another.',
  'problem.trip-not-an-object': 'The file holds {value} instead of a trip. Choose a trip file.',
  'problem.trip-other-format': 'The field “format” says {value}; a trip says “{expected}”. Choose a trip file.',
  'problem.trip-version-unreadable':
    'The field “version” says {value}; it must be a whole number up to {known}. Open a backup, or correct it.',
  'problem.trip-newer':
    'This trip was saved in format version {value}; this program reads up to version {known}. Update the program; the file stays as it is.',
  'problem.field-missing': '{where} ({field}) is missing; it should be: {expected}. Add it.',
  'problem.field-unknown':
    '{where} ({field}) is {value}, but that is not a field of a trip. Correct its name or remove it.',
  'problem.field-kind': '{where} ({field}) says {value}; it should be: {expected}. Correct it.',
  'problem.field-not-whole': '{where} ({field}) says {value}; only a whole number is read. Round it.',
  'problem.field-number-too-low': '{where} ({field}) says {value}; the least is {minimum}. Enter a larger number.',
  'problem.field-number-too-high': '{where} ({field}) says {value}; the most is {maximum}. Enter a smaller number.',
  'problem.field-text-too-short': '{where} ({field}) is empty; it needs {minimum} character or more. Type something.',
  'problem.field-text-too-long': '{where} ({field}) has {length} characters; {maximum} are the most. Shorten it.',
  'problem.field-list-too-short': '{where} ({field}) holds {value}; it needs {minimum} or more. Add one.',
  'problem.field-list-too-long': '{where} ({field}) holds {length}; {maximum} are the most. Remove some.',
  'problem.field-choice': '{where} ({field}) says {value}. Choose one of: {choices}.',
  'problem.field-id':
    '{where} ({field}) says {value}; an id is made of up to 64 letters, digits, hyphens and underscores. Correct it.',
  'problem.field-date': '{where} ({field}) says {value}; write a date like 2027-10-08.',
  'problem.field-clock': '{where} ({field}) says {value}; write a time of day like 17:40.',
  'problem.field-zone': '{where} ({field}) says {value}; write a time zone by its IANA name, or an offset like +01:00.',
  'problem.field-currency': '{where} ({field}) says {value}; write three capital letters such as EUR.',
  'problem.field-text': '{where} ({field}) says {value}, which is not written as it should be. Correct it.',
  'problem.field-unfit': '{where} ({field}) says {value}, which does not fit there. Correct it.',
  'problem.id-twice': '{where} ({field}): the id “{id}” is already used at {other}. Give one of the two another id.',
  'problem.reference-unknown':
    '{where} ({field}) names the {what} “{id}”, which the trip does not have. Choose one it has, or remove the mention.',
  'problem.reference-to-itself': '{where} ({field}): “{piece}” names itself. Remove the mention.',
  'problem.with-and-apart':
    '{where} ({field}): “{piece}” is to ride both together with and apart from {value}. Keep one of the two.',
  'problem.night-twice': '{where} ({field}): “{piece}” has two places for the night {value}. Keep one.',
  'problem.lock-twice': '{where} ({field}): “{piece}” is fixed twice in the same layout ({value}). Keep one place.',
  'problem.lock-bay-not-usable':
    '{where} ({field}): “{piece}” is fixed in {bay}, which is not used in the layout: {layout}. Choose another bay or free it.',
  'problem.lock-outside-bay':
    '{where} ({field}): at {value} mm “{piece}” would stick out of {bay} ({size} mm). Move it inside.',
  'problem.rigid-squeezed':
    '{where} ({field}): “{piece}” is rigid but may be squeezed to {value}. Set 1, or make it soft.',
  'problem.bin-inside-larger':
    '{where} ({field}): “{bin}” is {value} mm inside but only {maximum} mm outside. Measure again.',
  'problem.opening-empty':
    '{where} ({field}): the opening “{opening}” of {bay} has no width or height ({value}). Give its far corner.',
  'problem.opening-outside-face':
    '{where} ({field}): the opening “{opening}” reaches to {value} mm, beyond the {face} of {bay} ({size} mm). Make it smaller.',
  'problem.obstacle-outside-bay':
    '{where} ({field}): “{obstacle}” at {value} mm does not lie inside {bay} ({size} mm). Correct its position or size.',
  'problem.slope-too-deep':
    '{where} ({field}): the sloping wall “{slope}” leans in {value} mm, as deep as {bay} itself ({depth} mm). Make it smaller.',
  'problem.mattress-not-bedding':
    '{where} ({field}): “{piece}” is listed as the mattress but is no mattress or mat. Choose one, or say so in its bedding.',
  'problem.bed-without-mattress':
    '{where} ({field}) is empty: the bed has no mattress. Name the piece that is one, or give the insulation of a fitted one.',
  'problem.bed-longer-than-flat':
    '{where} ({field}): the made bed is {value} mm long, the flat surface only {maximum} mm. Measure again.',
  'problem.bed-wider-than-flat':
    '{where} ({field}): the made bed is {value} mm wide, the flat surface only {maximum} mm. Measure again.',
  'problem.payload-none':
    '{where} ({field}): ready to drive it weighs {value} g, as much as the permitted {maximum} g. Read both off the papers again.',
  'problem.axle-over-limit':
    '{where} ({field}): the empty axle carries {value} g, more than its limit of {maximum} g. Read both off the papers again.',
  'problem.axle-sum':
    '{where} ({field}) says {value} g: the two axles add up to {sum} g, but the vehicle weighs {ready} g. Weigh or read again.',
  'problem.roof-over-limit':
    '{where} ({field}): bars and box weigh {value} g, more than the roof limit of {maximum} g. Take them off or correct it.',
  'problem.electric-without-battery': '{where} ({field}) is missing, but the vehicle is electric. Add it.',
  'problem.reserve-above-limit':
    '{where} ({field}): the reserve {value} is not below the charge limit {maximum}. Lower the reserve.',
  'problem.current-least-above-most':
    '{where} ({field}): the least current {value} A is above the most, {maximum} A. Correct one of them.',
  'problem.cop-out-of-order':
    '{where} ({field}): {value} °C does not come after the point before it. List the points from cold to warm.',
  'problem.nights-out-of-order':
    '{where} ({field}) says {value}, which is not after the night before ({before}). Put the nights in order.',
  'problem.arrive-charge-missing':
    '{where} ({field}) is missing: the first night needs the charge on arriving. Enter it.',
  'problem.date-impossible': '{where} ({field}) says {value}, a day that no calendar has. Correct the date.',
  'problem.zone-unknown':
    '{where} ({field}) says {value}, a time zone this machine does not know. Choose another, or an offset like +01:00.',
  'problem.span-empty': '{where} ({field}) says {value}, the same as its start. Give a later end.',
  'problem.sleep-too-long':
    '{where} ({field}): from {from} to {value} is {hours} h of sleep. Perhaps the two are the wrong way round; correct them.',
  'problem.clock-twice': '{where} ({field}): {value} is listed twice. Keep one of the two.',
  'problem.low-above-high':
    '{where} ({field}): the low of {value} °C is above the high of {maximum} °C. Swap or correct them.',
  'problem.reading-rises':
    '{where} ({field}): {value} V at {current} A is more than at a smaller current. Read the meter again or remove the reading.',
  'problem.bedding-twice': '{where} ({field}): “{piece}” is chosen twice for this night. Keep it once.',
  'problem.bedding-not-bedding':
    '{where} ({field}): “{piece}” is no bedding. Choose bedding, or say in the kit what it is.',
  'problem.charger-beyond-leg':
    '{where} ({field}): the fast charger stands at {value} m, but the drive ends after {maximum} m. Correct one of them.',
  'problem.tick-twice': '{where} ({field}): the step {value} is ticked twice. Remove one tick.',
  'problem.nobody-drives': '{where} ({field}) says {value}: nobody drives. Name a driver.',
  'problem.edit-target-missing': 'The trip has no {what} “{id}” any more. Choose another.',
  'problem.edit-id-taken': 'The id “{id}” is already used in this trip. Choose another.',
  'problem.edit-path-missing': 'The trip has no field {field} that could be set. Choose another field.',
  'problem.edit-last-night': 'A trip keeps at least one night. Add another night before removing this one.',
  'path.sizeMm.0': 'length',
  'path.sizeMm.1': 'width',
  'path.sizeMm.2': 'height',
  'what.piece': 'piece',
  'what.bin': 'bin',
  'what.bay': 'bay',
  'what.night': 'night',
  'what.traveller': 'traveller',
  'what.bed-heater': 'bed heater',
  'what.rule': 'rule',
  'what.unit': 'piece or bin',
  'what.lesson': 'lesson',
  'what.ledger-entry': 'ledger entry',
  'what.measurement': 'reading',
  'face.x-': 'rear side',
  'face.x+': 'front side',
  'face.y-': 'left side',
  'face.y+': 'right side',
  'face.z+': 'top',
  'expected.string': 'text',
  'expected.number': 'a number',
  'expected.int': 'a whole number',
  'expected.boolean': 'true or false',
  'expected.array': 'a list',
  'expected.tuple': 'a list of fixed length',
  'expected.object': 'a group of fields',
  'expected.record': 'a group of fields',
  'expected.nonoptional': 'a value',
  'layout.drive': 'drive',
  'layout.bed': 'bed',
} as const
