/** German: how each number of the night view came about. */
import type { nightHow as english } from '../en/night-how.ts'

export const nightHow: Record<keyof typeof english, string> = {
  'window.front.gap': 'Fenster {gapMm} offen',
  'window.front.moves': '{count} Handgriff am Abend | {count} Handgriffe am Abend',
  'window.advice.title': 'Empfohlen',
  'window.advice.take': 'Übernehmen',
  'window.advice.taken': 'Das ist der Plan der Nacht.',
  'window.advice.others': 'Andere Pläne, die keiner übertrifft',
  'window.advice.sensitivity': 'Wenn es schlechter kommt',
  'window.because.margin.formula':
    'Zu jeder Stunde: um wie viel das Bett wärmer ist, als jede Person es braucht. Das Kleinere aus Wärmebilanz und Schlafsack-Angabe, für die Person und Stunde mit der kleinsten Reserve.',
  'window.because.margin.source':
    'eigene Wärmebilanz bei 40 bis 47 W/m² (abgeleitet; keine Norm deckt kalten Schlaf ab); Komfortwert nach ISO 23537 mit 5 K Reserve, 8 K für Verfrorene',
  'window.because.leg.formula': 'Energie bei Abfahrt − Bedarf der Etappe − Rücklage',
  'window.because.leg.source':
    'Batteriebilanz dieses Plans; Verbrauch wie eingegeben oder aus Fahrwiderständen, mit Steigung und Kälte',
  'window.because.money.formula': 'Kosten des teuersten Plans − Kosten dieses Plans',
  'window.because.money.source': 'für den Platz eingegebener Tarif',
  'window.because.moves.formula':
    'Handgriffe am Abend: Bettzeug hervorholen samt dem, was davor liegt, und eine Abdeckung je Scheibe',
  'window.because.moves.source': 'Zugriff in der Ladung, wie sie am Tag gepackt ist',
  'window.because.bedding.formula':
    'Dämmung aller Decken einer Person zusammen; ein Komfortwert wird in Dämmung umgerechnet und zurück',
  'window.because.bedding.source': 'Angaben nach ISO 23537, clo nach ISO 9920; die Umrechnung ist abgeleitet',
  'window.because.bedHeat.formula':
    'Leistung der eingeschalteten Bettheizungen; die Luft ebenso warm zu machen, braucht ein Mehrfaches',
  'window.because.bedHeat.source':
    'Leistung wie für jede Bettheizung eingegeben; 25 bis 40 % erreichen den Körper (Schätzung)',
  'window.because.setPoint.formula': 'Der niedrigste geprüfte Sollwert, bei dem es noch alle warm genug haben',
  'window.because.setPoint.source': 'Suche über Sollwerte von 5 bis 20 °C, jeder durch die Nacht gerechnet',
  'window.because.preWarm.formula': '45 min vor dem Aufstehen, oder vor dem Abstecken, wenn das früher ist',
  'window.because.preWarm.source': 'übliche Praxis; Wärme vom Platz kostet die Batterie nichts',
  'window.because.current.formula':
    'Bezogene Energie ÷ Stunden an der Säule ÷ Volt, mit einem Fünftel Reserve; Wärme im Kontakt sinkt mit dem Quadrat des Stroms',
  'window.because.current.source': 'IEC 61851, mindestens 6 A; Volt wie gelesen oder angenommen',
  'window.because.limit.formula': 'Bedarf der Etappe × 1,1 ÷ nutzbare Energie + Rücklage, in Schritten von 5 %',
  'window.because.limit.source': 'eingegebene Etappe und Preis je kWh',
  'window.because.covers.formula': 'Dieselbe Nacht mit und ohne Abdeckung',
  'window.because.covers.source': 'Abdeckung in Reihe mit Glas und Übergängen, EN 673',
  'window.because.gap.formula': 'Der schmalste geprüfte Spalt, der CO₂ unter 2000 ppm hält oder eine warme Nacht kühlt',
  'window.because.gap.source': 'EN 16798-7 für eine Seite, zwei Schlitze in Reihe quer durch (aus dem Gedächtnis)',
  'window.because.sensitivity.formula':
    'Der empfohlene Plan noch einmal gerechnet: 5 K kälter, und mit 10 % mehr Verbrauch der Etappe',
  'window.because.sensitivity.source': 'dieselbe Rechnung; so weit liegen Vorhersage und Verbrauch oft daneben',
  'window.input.lining': 'an Himmel und Verkleidung',
  'window.input.coil': 'von der Kühlung abgeführt',
  'window.input.margin': 'Wärmereserve',
  'window.input.departure': 'Ladestand bei Abfahrt',
  'window.input.cost': 'Kosten',
  'window.input.moves': 'Handgriffe am Abend',
  'window.input.room': 'Raum des Bettzeugs',
  'window.input.usableA': 'sinnvoll',
  'window.input.feet': 'Füße',
  'window.input.required': 'nötig über dem Körper',
  'window.input.provided': 'vorhanden',
  'window.input.ruledBy': 'maßgebend',
  'window.ruledBy.bag-rating': 'die Angabe des Schlafsacks',
  'window.ruledBy.heat-balance': 'die Wärmebilanz',
  'window.sleeperHour': 'Bett {marginK}, Füße {feetK} Reserve',
  'window.sleeper.formula':
    'Erzeugte Wärme − Atem − Feuchte = Wärme durch Decken und Matte; die Stunde zeigt, um wie viel das Bett wärmer ist als nötig, Füße um 3 K strenger und näher am Boden',
  'window.number.windowCost': 'Ein Fenster {gap} offen',
  'window.number.windowCost.formula':
    'Luft durch den Spalt aus Wind und Auftrieb × 0,34 W/K je m³/h × Unterschied innen minus außen, Mittel der Schlafstunden',
  'window.number.windowCost.source':
    'EN 16798-7 für eine Seite, zwei Schlitze in Reihe quer durch (aus dem Gedächtnis, auf den Faktor 1,5 genau)',
  'window.fault.do': 'Was zu tun ist',
  'window.fault.hourly': 'Stunde für Stunde',
  'window.fault.hour.clock': 'Zeit',
  'window.fault.hour.outside': 'Draußen',
  'window.fault.hour.bed': 'Bett',
  'window.fault.hour.margin': 'Reserve',
  'window.fault.hour.charge': 'Ladestand',
  'window.fault.hour.awake': 'wach',
  'window.fault.latest': 'Spätestens handeln',
  'window.fault.latest.formula':
    'Dieselbe Nacht, die Handgriffe immer später, bis jemand friert oder die Etappe nicht mehr gelingt; auf die Minute gesucht',
  'window.fault.latest.source': 'die Rechnung dieser Nacht',
  'window.fault.ifDone': 'Reserve, wenn sofort getan',
}
