/** German sentences of the window: the first steps and the lists of kit to begin with. Flat keys; `{name}` is filled in. */
import type { windowFirst as english } from '../en/window-first.ts'

export const windowFirst: Record<keyof typeof english, string> = {
  'window.first.label': 'Erste Schritte',
  'window.first.count': '{done} von {count}',
  'window.first.vehicle':
    'Den eigenen Laderaum zwischen den Verkleidungen messen und überschreiben, was hier steht. Massen stehen auf dem Schild oder in den Papieren.',
  'window.first.kit':
    'Aufzählen, was mitkommt: eine Liste für den Anfang nehmen, eine Tabelle einfügen oder Stück für Stück hinzufügen.',
  'window.first.travellers':
    'Sagen, wann es zu Hause losgeht und wer im Fahrzeug schläft. Die Größe entscheidet, ob das Bett lang genug ist; wer leicht friert, bekommt mehr Wärme.',
  'window.first.nights':
    'Sagen, wo und wann: Platz, Zeiten, Tiefstwert der Vorhersage und der Anschluss, wo es einen gibt.',
  'window.first.workbench':
    'Das ist der Plan. Am Band oben ziehen: Ladung, Nacht und Checkliste zeigen diesen Augenblick.',
  'window.first.next': 'Weiter: {screen}',
  'window.first.done': 'Verstanden',
  'window.first.leave': 'Erste Schritte verlassen',
  'window.kit.lists': 'Aus einer Liste',
  'window.kit.listsHint': 'Übliches mit gerundeten Maßen, zum Ändern auf die eigenen. Was schon da ist, bleibt weg.',
  'window.kit.listAdd': '{count} Stück hinzufügen | {count} Stück hinzufügen',
  'window.kit.listNone': 'Nichts markiert.',
  'window.kit.listHave': 'schon da',
  'window.edit.list': 'aus einer Liste hinzufügen',
  'window.list.sleep': 'Schlafen',
  'window.list.cook': 'Küche',
  'window.list.wash': 'Waschen',
  'window.list.power': 'Anschluss und Strom',
  'window.list.help': 'Erste Hilfe und Auto',
  'window.list.piece.liner': 'Innenschlafsack',
  'window.list.piece.blanket': 'Wolldecke',
  'window.list.piece.hotWater': 'Wärmflasche',
  'window.list.piece.stove': 'Gaskocher',
  'window.list.piece.cartridge': 'Gaskartusche',
  'window.list.piece.pots': 'Töpfe und Besteck',
  'window.list.piece.food': 'Essenskiste',
  'window.list.piece.coolBox': 'Kühlbox',
  'window.list.piece.washBag': 'Waschbeutel',
  'window.list.piece.towels': 'Handtücher',
  'window.list.piece.toilet': 'Nottoilette',
  'window.list.piece.rubbish': 'Müllbeutel',
  'window.list.piece.lead': 'Anschlusskabel 25 m',
  'window.list.piece.adapter': 'Steckdosen-Adapter',
  'window.list.piece.headTorch': 'Stirnlampe',
  'window.list.piece.powerBank': 'Powerbank',
  'window.list.piece.firstAid': 'Verbandkasten',
  'window.list.piece.triangle': 'Warndreieck',
  'window.list.piece.extinguisher': 'Feuerlöscher',
  'window.list.piece.shovel': 'Klappspaten',
  'window.list.piece.chairs': 'Klappstuhl',
}
