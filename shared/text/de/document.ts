/** German sentences: document. */
import type { document as english } from '../en/document.ts'

export const document: Record<keyof typeof english, string> = {
  'problem.file-empty': 'Die Datei ist leer (0 Byte). Wähle eine andere Datei oder eine Sicherung von dieser.',
  'problem.file-too-large':
    'Die Datei hat {sizeMiB} MiB; gelesen werden höchstens {limitMiB} MiB. Wähle eine Reisedatei.',
  'problem.file-utf16': 'Die Datei ist als UTF-16 geschrieben. Speichere sie im Editor als UTF-8 und öffne sie erneut.',
  'problem.file-not-utf8':
    'Byte {offset} ist kein UTF-8-Text. Speichere die Datei als UTF-8 oder öffne eine Sicherung.',
  'problem.json-unreadable':
    'Zeile {line}, Spalte {column} (Byte {offset}): {found} steht, wo {expected} stehen müsste. Berichtige die Stelle oder öffne eine Sicherung.',
  'problem.json-key-twice':
    'Zeile {line}, Spalte {column}: „{key}“ steht an derselben Stelle zweimal. Entferne eines davon.',
  'problem.json-forbidden-key':
    'Zeile {line}, Spalte {column}: Der Name „{key}“ ist in einer Reisedatei nicht erlaubt. Entferne ihn.',
  'problem.json-number-range': 'Zeile {line}, Spalte {column}: {value} ist für jede Zahl zu groß. Berichtige sie.',
  'problem.json-broken-character': 'Zeile {line}, Spalte {column}: Der Text enthält ein halbes Zeichen. Tippe ihn neu.',
  'problem.json-too-deep':
    'Zeile {line}, Spalte {column}: Mehr als {limit} Ebenen liegen ineinander. Das ist keine Reisedatei von uns; öffne eine andere.',
  'problem.trip-not-an-object': 'Die Datei enthält {value} statt einer Reise. Wähle eine Reisedatei.',
  'problem.trip-other-format':
    'Das Feld „format“ lautet {value}; bei einer Reise lautet es „{expected}“. Wähle eine Reisedatei.',
  'problem.trip-version-unreadable':
    'Das Feld „version“ lautet {value}; es muss eine ganze Zahl bis {known} sein. Öffne eine Sicherung oder berichtige es.',
  'problem.trip-newer':
    'Diese Reise wurde in Formatversion {value} gespeichert; dieses Programm liest bis Version {known}. Aktualisiere das Programm; die Datei bleibt, wie sie ist.',
  'problem.field-missing': '{where} ({field}) fehlt; verlangt ist: {expected}. Ergänze es.',
  'problem.field-unknown':
    '{where} ({field}) ist {value}, aber das ist kein Feld einer Reise. Berichtige den Namen oder entferne es.',
  'problem.field-kind': '{where} ({field}) lautet {value}; verlangt ist: {expected}. Berichtige es.',
  'problem.field-not-whole': '{where} ({field}) lautet {value}; gelesen wird nur eine ganze Zahl. Runde sie.',
  'problem.field-number-too-low':
    '{where} ({field}) lautet {value}; das Mindeste ist {minimum}. Gib eine größere Zahl ein.',
  'problem.field-number-too-high':
    '{where} ({field}) lautet {value}; das Höchste ist {maximum}. Gib eine kleinere Zahl ein.',
  'problem.field-text-too-short':
    '{where} ({field}) ist leer; nötig ist mindestens {minimum} Zeichen. Schreib etwas hinein.',
  'problem.field-text-too-long':
    '{where} ({field}) hat {length} Zeichen; höchstens {maximum} sind möglich. Kürze den Text.',
  'problem.field-list-too-short':
    '{where} ({field}) enthält {value}; nötig ist mindestens {minimum}. Füge eines hinzu.',
  'problem.field-list-too-long':
    '{where} ({field}) enthält {length}; höchstens {maximum} sind möglich. Entferne einige.',
  'problem.field-choice': '{where} ({field}) lautet {value}. Wähle eines von: {choices}.',
  'problem.field-id':
    '{where} ({field}) lautet {value}; eine Kennung besteht aus höchstens 64 Buchstaben, Ziffern, Binde- und Unterstrichen. Berichtige sie.',
  'problem.field-date': '{where} ({field}) lautet {value}; schreib ein Datum wie 2027-10-08.',
  'problem.field-clock': '{where} ({field}) lautet {value}; schreib eine Uhrzeit wie 17:40.',
  'problem.field-zone':
    '{where} ({field}) lautet {value}; schreib eine Zeitzone mit ihrem IANA-Namen oder einen Abstand wie +01:00.',
  'problem.field-currency': '{where} ({field}) lautet {value}; schreib drei Großbuchstaben wie EUR.',
  'problem.field-text':
    '{where} ({field}) lautet {value} und ist nicht so geschrieben, wie es sein müsste. Berichtige es.',
  'problem.field-unfit': '{where} ({field}) lautet {value}; das passt dort nicht. Berichtige es.',
  'problem.id-twice':
    '{where} ({field}): Die Kennung „{id}“ wird schon bei {other} benutzt. Gib einem von beiden eine andere.',
  'problem.reference-unknown':
    '{where} ({field}) nennt „{id}“ ({what}); das gibt es in der Reise nicht. Wähle etwas Vorhandenes oder entferne die Angabe.',
  'problem.reference-to-itself': '{where} ({field}): „{piece}“ nennt sich selbst. Entferne die Angabe.',
  'problem.with-and-apart':
    '{where} ({field}): „{piece}“ soll mit {value} zusammen und zugleich getrennt fahren. Behalte eines von beiden.',
  'problem.night-twice': '{where} ({field}): „{piece}“ hat für die Nacht {value} zwei Plätze. Behalte einen.',
  'problem.lock-twice':
    '{where} ({field}): „{piece}“ ist in derselben Anordnung ({value}) zweimal festgelegt. Behalte einen Platz.',
  'problem.lock-bay-not-usable':
    '{where} ({field}): „{piece}“ ist in {bay} festgelegt; dieser Stauraum wird in dieser Anordnung nicht benutzt: {layout}. Wähle einen anderen oder gib es frei.',
  'problem.lock-outside-bay':
    '{where} ({field}): Bei {value} mm ragt „{piece}“ aus {bay} ({size} mm) heraus. Rück es hinein.',
  'problem.rigid-squeezed':
    '{where} ({field}): „{piece}“ ist fest, darf aber auf {value} gedrückt werden. Setze 1 oder mach es weich.',
  'problem.bin-inside-larger':
    '{where} ({field}): „{bin}“ misst innen {value} mm, außen aber nur {maximum} mm. Miss noch einmal nach.',
  'problem.opening-empty':
    '{where} ({field}): Die Öffnung „{opening}“ von {bay} hat keine Breite oder Höhe ({value}). Gib ihre zweite Ecke an.',
  'problem.opening-outside-face':
    '{where} ({field}): Die Öffnung „{opening}“ reicht bis {value} mm über diese Seite von {bay} hinaus: {face} ({size} mm). Mach sie kleiner.',
  'problem.obstacle-outside-bay':
    '{where} ({field}): „{obstacle}“ bei {value} mm liegt nicht in {bay} ({size} mm). Berichtige Lage oder Größe.',
  'problem.slope-too-deep':
    '{where} ({field}): Die schräge Wand „{slope}“ ragt {value} mm hinein, so tief wie {bay} selbst ({depth} mm). Mach sie kleiner.',
  'problem.mattress-not-bedding':
    '{where} ({field}): „{piece}“ gilt als Matratze, ist aber weder Matratze noch Matte. Wähle eine oder gib es beim Bettzeug an.',
  'problem.bed-without-mattress':
    '{where} ({field}) ist leer: Das Bett hat keine Matratze. Nenne das Stück oder gib die Dämmung einer eingebauten an.',
  'problem.bed-longer-than-flat':
    '{where} ({field}): Das gemachte Bett ist {value} mm lang, die ebene Fläche nur {maximum} mm. Miss noch einmal nach.',
  'problem.bed-wider-than-flat':
    '{where} ({field}): Das gemachte Bett ist {value} mm breit, die ebene Fläche nur {maximum} mm. Miss noch einmal nach.',
  'problem.payload-none':
    '{where} ({field}): Fahrbereit wiegt es {value} g, so viel wie die erlaubten {maximum} g. Lies beides noch einmal in den Papieren nach.',
  'problem.axle-over-limit':
    '{where} ({field}): Die leere Achse trägt {value} g, mehr als erlaubt ({maximum} g). Lies beides noch einmal in den Papieren nach.',
  'problem.axle-sum':
    '{where} ({field}) lautet {value} g: Beide Achsen ergeben {sum} g, das Fahrzeug wiegt aber {ready} g. Wiege oder lies noch einmal nach.',
  'problem.roof-over-limit':
    '{where} ({field}): Träger und Box wiegen {value} g, mehr als die Dachlast von {maximum} g. Nimm sie ab oder berichtige es.',
  'problem.electric-without-battery': '{where} ({field}) fehlt, obwohl das Fahrzeug elektrisch fährt. Ergänze es.',
  'problem.reserve-above-limit':
    '{where} ({field}): Die Reserve {value} liegt nicht unter der Ladegrenze {maximum}. Senke die Reserve.',
  'problem.current-least-above-most':
    '{where} ({field}): Der kleinste Strom {value} A liegt über dem größten, {maximum} A. Berichtige einen von beiden.',
  'problem.cop-out-of-order':
    '{where} ({field}): {value} °C folgt nicht auf den Punkt davor. Ordne die Punkte von kalt nach warm.',
  'problem.nights-out-of-order':
    '{where} ({field}) lautet {value} und liegt nicht nach der Nacht davor ({before}). Ordne die Nächte.',
  'problem.arrive-charge-missing':
    '{where} ({field}) fehlt: Die erste Nacht braucht den Ladestand bei der Ankunft. Gib ihn ein.',
  'problem.date-impossible':
    '{where} ({field}) lautet {value}; diesen Tag gibt es in keinem Kalender. Berichtige das Datum.',
  'problem.zone-unknown':
    '{where} ({field}) lautet {value}; diese Zeitzone kennt dieses Gerät nicht. Wähle eine andere oder einen Abstand wie +01:00.',
  'problem.span-empty': '{where} ({field}) lautet {value} und gleicht dem Anfang. Gib ein späteres Ende an.',
  'problem.sleep-too-long':
    '{where} ({field}): Von {from} bis {value} sind {hours} h Schlaf. Vielleicht sind beide vertauscht; berichtige sie.',
  'problem.clock-twice': '{where} ({field}): {value} steht zweimal in der Liste. Behalte eines davon.',
  'problem.low-above-high':
    '{where} ({field}): Das Minimum {value} °C liegt über dem Maximum {maximum} °C. Tausche oder berichtige sie.',
  'problem.reading-rises':
    '{where} ({field}): {value} V bei {current} A ist mehr als bei kleinerem Strom. Lies noch einmal ab oder entferne den Wert.',
  'problem.bedding-twice': '{where} ({field}): „{piece}“ ist für diese Nacht zweimal gewählt. Behalte es einmal.',
  'problem.bedding-not-bedding':
    '{where} ({field}): „{piece}“ ist kein Bettzeug. Wähle Bettzeug oder gib beim Gepäck an, was es ist.',
  'problem.charger-beyond-leg':
    '{where} ({field}): Die Schnellladesäule steht bei {value} m, die Fahrt endet aber nach {maximum} m. Berichtige eines davon.',
  'problem.tick-twice': '{where} ({field}): Der Schritt {value} ist zweimal abgehakt. Entferne einen Haken.',
  'problem.nobody-drives': '{where} ({field}) lautet {value}: Niemand fährt. Bestimme, wer fährt.',
  'problem.edit-target-missing': 'Die Reise hat „{id}“ ({what}) nicht mehr. Wähle etwas anderes.',
  'problem.edit-id-taken': 'Die Kennung „{id}“ wird in dieser Reise schon benutzt. Wähle eine andere.',
  'problem.edit-path-missing': 'Die Reise hat kein Feld {field}, das sich setzen ließe. Wähle ein anderes.',
  'problem.edit-last-night':
    'Eine Reise behält mindestens eine Nacht. Erst eine andere hinzufügen, dann diese entfernen.',
  'path.sizeMm.0': 'Länge',
  'path.sizeMm.1': 'Breite',
  'path.sizeMm.2': 'Höhe',
  'what.piece': 'Stück',
  'what.bin': 'Kiste',
  'what.bay': 'Stauraum',
  'what.night': 'Nacht',
  'what.traveller': 'Mitreisende',
  'what.bed-heater': 'Bettheizung',
  'what.rule': 'Regel',
  'what.unit': 'Stück oder Kiste',
  'what.lesson': 'Lehre',
  'what.ledger-entry': 'Ausgabe',
  'what.measurement': 'Messung',
  'face.x-': 'Rückseite',
  'face.x+': 'Vorderseite',
  'face.y-': 'linke Seite',
  'face.y+': 'rechte Seite',
  'face.z+': 'Oberseite',
  'expected.string': 'Text',
  'expected.number': 'eine Zahl',
  'expected.int': 'eine ganze Zahl',
  'expected.boolean': 'true oder false',
  'expected.array': 'eine Liste',
  'expected.tuple': 'eine Liste fester Länge',
  'expected.object': 'eine Gruppe von Feldern',
  'expected.record': 'eine Gruppe von Feldern',
  'expected.nonoptional': 'ein Wert',
  'layout.drive': 'Fahren',
  'layout.bed': 'Schlafen',
}
