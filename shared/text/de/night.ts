/** German sentences: night. */
import type { night as english } from '../en/night.ts'

export const night: Record<keyof typeof english, string> = {
  'night.verdict.warm': 'Warm',
  'night.verdict.enough': 'Warm genug',
  'night.verdict.cool': 'Kühl',
  'night.verdict.cold': 'Kalt',
  'night.verdict.too-cold': 'Zu kalt zum Schlafen',
  'night.sleeper.warm': '{name} schläft warm, {margin} Reserve.',
  'night.sleeper.enough': '{name} hat es warm genug, {margin} Reserve.',
  'night.sleeper.cool': '{name} hat es ab {time} kühl: {margin} zu wenig.',
  'night.sleeper.cold': '{name} friert ab {time}: {margin} zu wenig.',
  'night.sleeper.too-cold': '{name} kann so nicht durchschlafen: ab {time} fehlen {margin}.',
  'night.feetCold': 'Kalte Füße ab {time}: {name}.',
  'night.ruledBy.bag-rating': 'Hier entscheidet der Komfortwert des Schlafsacks (ISO 23537, mit 5 K Reserve).',
  'night.ruledBy.heat-balance': 'Hier entscheidet unsere eigene Wärmebilanz (hergeleitet, 40 bis 47 W/m²).',
  'night.requiredClo': 'Braucht {needed} clo über dem Körper, hat {provided} clo.',
  'night.limit.breaker': 'Sicherung, 80 % bei stundenlanger Last',
  'night.limit.socket': 'Steckdose',
  'night.limit.site': 'Platzregel',
  'night.limit.lead': 'Kabel',
  'night.limit.adapter': 'Adapter',
  'night.limit.charging-unit': 'Ladegerät am Kabel',
  'night.limit.held': 'Strom, der gehalten hat',
  'night.limit.onboard': 'Bordlader',
  'night.limit.voltage': 'Spannung unter Last',
  'night.caution.co2-high': 'Verbrauchte Luft: zwei Fenster auf gegenüberliegenden Seiten weiter öffnen.',
  'night.caution.no-fresh-air':
    'Zu wenig Frischluft für alle an Bord: zwei Fenster 10 bis 15 mm öffnen, auf der windabgewandten Seite weiter.',
  'night.caution.shared-wiring':
    'Die Spannung sackt unter Last ab: Die Leitung ist lang, dünn oder geteilt. Weniger Strom nehmen und nach einer halben Stunde den Stecker fühlen.',
  'night.caution.domestic-socket':
    'Eine Haushaltssteckdose ist nicht für stundenlange Last gebaut: Strom niedrig halten, Stecker fühlen, beim Platz fragen, wer den Stromkreis geprüft hat.',
  'night.caution.adapter':
    'Ein Adapter trägt nur, wofür er ausgelegt ist, und schützt nichts: trocken, vom Boden weg und kühl halten.',
  'night.caution.polarity-reversed':
    'Phase und Neutralleiter sind vertauscht: vor jedem Griff an die Leitung den Stecker ziehen und dem Platz melden. Richten darf das eine Elektrofachkraft.',
  'night.caution.earth-missing':
    'Kein Schutzleiter: nicht einstecken. Dem Platz melden; richten darf das eine Elektrofachkraft.',
  'night.caution.earth-not-known': 'Schutzleiter nicht geprüft: Steckdose vor dem Einstecken prüfen.',
  'night.caution.sag-step-down': 'Die Spannung ist unter Last niedrig: weniger Strom anfordern.',
  'night.caution.sag-stop': 'Die Spannung ist unter Last zu niedrig: aufhören, ausstecken, dem Platz melden.',
  'night.caution.cold-illness':
    'Die Kälte kann hier krank machen: Zittern, lallende Sprache und Verwirrtheit sind ein Notfall. Aufwachen, aufwärmen, Hilfe rufen.',
  'night.caution.heat-illness':
    'Die Hitze kann hier krank machen: lüften, trinken, abkühlen. Verwirrtheit oder heiße, trockene Haut ist ein Notfall.',
  'night.caution.heater-stops': 'Die Heizung endet vor der Nacht: Bettzeug mitnehmen, das auch ohne sie reicht.',
  'night.caution.carbon-monoxide':
    'Drinnen nie etwas verbrennen und keinen Motor im Schnee oder an einer Wand laufen lassen. Kohlenmonoxid-Melder mitführen; er macht keine Flamme zulässig.',
  'night.caution.leisure-frost': 'Die Bordbatterie ist unter null Grad und nimmt keine Ladung an: erst aufwärmen.',
  'night.caution.extension-lead':
    'Das ganze Kabel abrollen, Verbindungen trocken und vom Boden weg halten und unter Last fühlen.',
  'night.caution.below-minimum-current':
    'Die Säule gibt weniger, als die Ladesteuerung anfordern kann (6 A): Hier lädt das Auto nicht.',
  'night.caution.two-loads': 'Die Säule trägt Heizlüfter und Lader nicht zusammen: nur eines auf einmal betreiben.',
  'night.reason.warm-and-leg': 'Alle haben es warm genug, die Etappe gelingt ohne Halt; der günstigste solche Plan.',
  'night.reason.warm-with-stop': 'Alle haben es warm genug; die Etappe braucht einen Ladehalt.',
  'night.reason.warm-no-leg': 'Alle haben es warm genug, zum niedrigsten Preis.',
  'night.reason.leg-first': 'Beides zugleich schafft kein Plan: Dieser hält die Etappe und ist davon der wärmste.',
  'night.reason.warmest': 'Kein Plan hält alle warm oder schafft die Etappe: Dieser ist der wärmste.',
  'night.sensitivity.colder': 'Bei 5 K mehr Kälte: {margin} Reserve am Bett, {charge} bei der Abfahrt.',
  'night.sensitivity.thirstier': 'Wenn die Etappe 10 % mehr braucht: {energy} Reserve.',
  'night.fault.supply-lost': 'Strom weg um {time}',
  'night.fault.breaker-trips': 'Sicherung fällt um {time}',
  'night.fault.heater-fails': 'Heizung fällt um {time} aus',
  'night.fault.do.supply-lost':
    'Heizung bis {time} ausschalten, damit die Etappe noch gelingt; im wärmsten Bettzeug schlafen.',
  'night.fault.do.breaker-trips':
    'Vor dem Einschalten der Sicherung, bis {time}, den Strom herabsetzen; fällt sie wieder, lassen und dem Platz melden.',
  'night.fault.do.heater-fails': 'Bettheizung an, Mütze auf, Füße zudecken; wer zittert, geht ins Warme.',
  'night.fault.noAction': 'Für die Etappe ist nichts zu tun.',
  'night.fault.heatLeft': 'Wärme für weitere {hours}.',
  'night.loss.shell': 'Hülle',
  'night.loss.freshAir': 'Frischluft',
  'night.loss.sky': 'Klarer Himmel',
  'night.gapCost': 'Das offene Fenster kostet im Mittel {power}.',
  'night.bedHeater.heated-seat': 'Sitzheizung',
  'night.bedHeater.underblanket': 'Heizunterbett',
  'night.bedHeater.foot-pad': 'Fußwärmer',
  'night.heater.heat-pump': 'Wärmepumpe',
  'night.heater.resistance': 'Widerstandsheizung',
  'night.heater.mains-fan-heater': 'Heizlüfter am Netz',
  'night.heater.none': 'Keine Heizung',
  'night.calibration.none': 'Noch nichts gemessen: nur die Bauart, auf 30 bis 40 % unsicher.',
  'night.calibration.fitted':
    'Aus {count} Nacht bestimmt: {loss} ± {spread} W/K. | Aus {count} Nächten bestimmt: {loss} ± {spread} W/K.',
  'problem.weather-not-epw':
    'Das ist keine EPW-Wetterdatei: Die erste Zeile nennt keinen Ort. Eine EPW-Datei wählen oder eine Tabelle einlesen.',
  'problem.weather-columns':
    'Zeile {line} hat {columns} Spalten, zu wenige für eine EPW-Datei. Die Datei noch einmal von der Quelle sichern.',
  'problem.weather-reading-missing':
    'In Zeile {line} fehlen Temperatur, Feuchte oder Wind. Ergänzen oder die Zeile weglassen.',
  'problem.weather-date': 'Das Datum in Zeile {line} ist nicht lesbar: „{value}“. So schreiben: 2027-02-12 18:00.',
  'problem.weather-empty': 'Die Datei enthält keine Wetterstunden.',
  'problem.weather-column-unknown': 'Keine Spalte heißt „{column}“. Die Datei hat: {columns}.',
  'problem.weather-order': 'Zeile {line} liegt nicht nach der Zeile davor. Die Tabelle nach der Zeit sortieren.',
  'problem.weather-night-missing':
    'Die Datei deckt die Nacht von {from} bis {to} nicht ab. Eine andere Datei wählen oder die Stunden eintippen.',
}
