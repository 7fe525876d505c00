/** German sentences for what the plan finds, its verdict, its moves and its remedies. */
import type { findings as english } from '../en/findings.ts'

export const findings: Record<keyof typeof english, string> = {
  'problem.leave-in-movement-ban':
    'Abfahrt um {departUtc} fällt ins Fahrverbot bis {banToUtc}. Am Vorabend um einen Platz vor der Schranke bitten oder {lostS} später fahren, wenn das Verbot endet.',
  'problem.leave-home-after-arrival':
    'Abfahrt zu Hause ist {leaveDayUtc}, die Ankunft in {site} aber {arriveDayUtc}. Früher abfahren oder die erste Ankunft später legen.',
  'problem.back-home-before-leaving':
    'Rückkehr nach Hause ist {backDayUtc}, die Abfahrt in {site} aber erst {departDayUtc}. Die Rückkehr später oder den letzten Morgen früher legen.',
  'problem.leave-before-gate':
    'Abfahrt um {departUtc} liegt vor der Toröffnung um {gateToUtc}. Nach dem Code oder einem Platz draußen fragen, oder {lostS} später fahren.',
  'problem.leave-in-quiet-hours':
    'Abfahrt um {departUtc} liegt in der Ruhezeit (bis {quietToUtc}). Leise packen und ausstecken, keine Tür zuschlagen; am Abend abfahrbereit machen.',
  'problem.leave-after-check-out':
    'Abfahrt um {departUtc} liegt nach der Abreisezeit {checkOutUtc}. Früher aufstehen oder um spätere Abreise bitten.',
  'problem.arrive-after-check-in':
    'Ankunft um {arriveUtc} liegt nach Ende der Anmeldung um {closesUtc}. Den Platz anrufen oder früher ankommen.',
  'problem.arrive-before-check-in': 'Ankunft um {arriveUtc} liegt vor Beginn der Anmeldung um {opensUtc}.',
  'problem.arrive-after-gate':
    'Ankunft um {arriveUtc} liegt nach Torschluss um {gateFromUtc}. Den Platz anrufen oder früher ankommen.',
  'problem.arrive-in-movement-ban':
    'Ankunft um {arriveUtc} fällt in das Fahrverbot ab {banFromUtc}: Kein Fahrzeug darf dann auf seinen Platz fahren. Früher ankommen oder um einen Platz vor der Schranke bitten.',
  'problem.arrive-in-the-dark':
    'Ankunft um {arriveUtc}, Sonnenuntergang um {sunsetUtc}: Stellplatz, Säule und Bett brauchen {wantedS} Licht.',
  'problem.wake-earlier':
    'Um {neededUtc} aufstehen, nicht um {plannedUtc}: Abfahrt ist um {departUtc}, der Morgen braucht {morningS}.',
  'problem.unplug-before-leaving':
    'Ausstecken ist für {unplugUtc} geplant, nach der Abfahrt um {departUtc}. Der Plan zählt Ladung nur bis zur Abfahrt.',
  'problem.no-sunrise': 'Bei {target} geht die Sonne an diesem Tag nicht auf: keine Zeit am Ziel berechenbar.',
  'problem.sleeping-not-allowed': '{site} erlaubt das Schlafen im Fahrzeug nicht. Anderen Platz wählen.',
  'problem.ask-about-sleeping':
    'Nicht bekannt, ob {site} das Schlafen in so einem Fahrzeug erlaubt. Vor dem Bezahlen genau so fragen.',
  'problem.charging-not-allowed': '{site} erlaubt das Laden am Stromkasten nicht. Der Plan lädt dort nicht.',
  'problem.ask-about-charging':
    'Nicht bekannt, ob {site} das Laden am Stromkasten erlaubt. Fragen: mit wie viel Strom, und wie wird bezahlt.',
  'problem.food-locker-missing':
    '{site} verlangt Essen im Schließkasten, und keiner ist bekannt. Nach den Innenmaßen fragen und eintragen.',
  'problem.adapter-not-on-board':
    '{adapter} wird bei {site} gebraucht und ist nicht dabei. Einpacken, sonst hat diese Nacht keinen Strom.',
  'problem.lead-too-short':
    'Das Kabel reicht nicht über die {runMm} bis zum Kasten. Vor dem Ausgleichen das Fahrzeug wenden oder näher stellen.',
  'problem.lead-wants-extension':
    'Das Kabel reicht nicht über die {runMm} bis zum Kasten. Fahrzeug wenden, näher stellen oder vor dem Ausgleichen {extension} holen.',
  'problem.head-low':
    'Das Kopfende läge {riseMm} tiefer. Fahrzeug wenden oder Keile von {rampMm} unter die tiefen Räder.',
  'problem.bed-too-short': '{traveller} misst {heightMm}; das Bett ist nur auf {flatMm} eben.',
  'problem.bed-just-long-enough': '{traveller} misst {heightMm} auf {flatMm} ebener Fläche: wenig Spielraum.',
  'problem.bed-too-narrow': 'Das Bett ist {widthMm} breit; {neededMm} sind für so viele Schläfer das Mindeste.',
  'problem.bed-step': 'Eine Stufe von {stepMm} drückt durch die Matte; auf unter {limitMm} auspolstern.',
  'problem.lie-only': '{headroomMm} über der Matratze: zum Liegen genug, nicht zum Sitzen.',
  'problem.no-place-by-day': '{unit} findet in der Fahranordnung keinen Platz: {rules}.',
  'problem.no-place-at-night': '{unit} findet in der Bettanordnung keinen Platz: {rules}.',
  'problem.over-payload': 'Die Ladung wiegt {amountG}; erlaubt sind {limitG}. {overG} herausnehmen.',
  'problem.over-front-axle':
    'Die Vorderachse trüge {amountG}; erlaubt sind {limitG}. Gewicht nach hinten oder {overG} dalassen.',
  'problem.over-rear-axle':
    'Die Hinterachse trüge {amountG}; erlaubt sind {limitG}. Gewicht nach vorn oder {overG} dalassen.',
  'problem.over-roof-load': 'Das Dach trüge {amountG}; erlaubt sind {limitG}. {overG} herunternehmen.',
  'problem.over-bay-load-limit': '{bay} trüge {amountG}; erlaubt sind {limitG}.',
  'problem.over-unit-too-heavy': 'Ein Stück in {bay} wiegt {amountG}; dort sind {limitG} erlaubt.',
  'problem.changeover-stuck': '{unit} lässt sich in keiner gefundenen Reihenfolge an den Nachtplatz bringen.',
  'problem.load-fuel-in-cabin':
    '{unit} fährt in {bay}, im Innenraum. Aufrecht, fest, fern von Personen, und lüften; draußen ist besser, wo ein Platz es zulässt.',
  'problem.load-unrestrained':
    '{unit} in {bay} wird von nichts gehalten. Bei 50 km/h zöge es mit {lowKn} bis {highKn}. Festzurren oder hinter eine Trennwand.',
  'problem.load-above-seat-back': '{unit} in {bay} ragt über die Lehnen. Netz oder Trennwand davor, oder tiefer legen.',
  'problem.load-heavy-high': '{unit} ist schwer und liegt in {bay} weit oben. Tiefer legen.',
  'problem.too-cold-for-bag':
    '{traveller} fehlen {shortK} nach der Angabe des Schlafsacks: {coldestC} am Bett, ab {fromUtc}. Wärmeres Bettzeug mitnehmen oder mehr heizen.',
  'problem.too-cold-for-body':
    '{traveller} verliert mehr Wärme, als ein Schlafender erzeugt: {shortK} zu wenig, {coldestC} am Bett, ab {fromUtc}. Wärmeres Bettzeug mitnehmen oder mehr heizen.',
  'problem.name-sounds-like-fuel':
    '{piece} klingt nach Brennstoff oder Gas, ist aber nicht so gekennzeichnet. In der Ausrüstung „brennt oder steht unter Druck“ ankreuzen: Dann bleibt es außerhalb des Schlafraums.',
  'problem.cool-sleeper':
    '{traveller} fehlen bei {coldestC} noch {shortK}: eine Schicht mehr anziehen oder mehr heizen.',
  'problem.cold-feet':
    '{traveller}: kalte Füße nach {fromUtc} ({feetC} an den Füßen). Trockene Socken, Wärmflasche, Füße weg von der Heckklappe.',
  'problem.night-co2-high': 'Kohlendioxid erreicht {co2Ppm}. Die Fenster weiter öffnen, auf zwei Seiten.',
  'problem.night-no-fresh-air':
    'Kaum frische Luft, wenn alles zu ist: Kohlendioxid erreicht {co2Ppm}. Auf zwei Seiten 10 bis 15 mm öffnen.',
  'problem.night-shared-wiring':
    'Die Spannung fällt unter dieser Last um {sag01}: die Leitung ist lang, dünn oder geteilt, und sie fällt weiter, wenn Nachbarn heizen. Vor dem Schlafen nochmals ablesen.',
  'problem.night-domestic-socket':
    'Eine Haushaltssteckdose über Stunden: Strom klein halten, Stecker nach 10 und 60 Minuten fühlen, bei Hitze aufhören. Örtliche Vorschriften und die Elektrofachkraft des Platzes entscheiden.',
  'problem.night-adapter':
    'Ein Adapter trägt den ganzen Strom und schützt vor nichts: nur bis zu seinem eigenen Wert, trocken und nicht am Boden.',
  'problem.night-polarity-reversed':
    'Die Polung an diesem Kasten ist vertauscht. Manche Ladegeräte verweigern; ein einpoliger Schalter macht nicht spannungsfrei. Dem Platz melden; nur einen dafür gemachten Adapter benutzen.',
  'problem.night-earth-missing': 'Kein Schutzleiter an diesem Kasten. Nicht einstecken; dem Platz melden.',
  'problem.night-earth-not-known': 'Schutzleiter nicht geprüft. Vor dem Einstecken prüfen.',
  'problem.night-sag-step-down':
    'Die Spannung fällt unter dieser Last auf {lowV}: Strom verringern oder gar keinen entnehmen.',
  'problem.night-sag-stop': 'Dieser Kasten gibt nicht mehr als {lowV}: hier nicht laden, dem Platz melden.',
  'problem.night-cold-illness':
    '{tempC} am Bett. Zittern, Verwirrtheit oder lallende Sprache sind ein Notfall: wärmen und Hilfe rufen.',
  'problem.night-heat-illness':
    '{tempC} am Bett. Kopfweh, heiße trockene Haut oder Verwirrtheit sind ein Notfall: kühlen und Hilfe rufen.',
  'problem.night-heater-stops':
    'Die Heizung endet um {atUtc}: der Anschluss endet, die Batterie erreicht ihre Reserve, oder das Fahrzeug schaltet ab. Das Bett für danach ohne Heizung planen.',
  'problem.night-carbon-monoxide':
    'Kohlenmonoxid-Melder mitnehmen und drinnen nichts verbrennen; ein Feuer oder Generator des Nachbarn genügt.',
  'problem.night-leisure-frost':
    'Ab {atUtc} ist die Bordbatterie unter null Grad: dann nicht laden, außer der Hersteller erlaubt es.',
  'problem.night-leisure-acid-frost':
    'Ab {atUtc} kann die Säure der Bordbatterie bei ihrem Ladestand gefrieren: voller oder wärmer halten und gefroren nie laden; ein gerissenes Gehäuse verliert Säure.',
  'problem.night-extension-lead':
    'Kabel ganz abrollen, nur bis zu seinem eigenen Wert belasten, Verbindungen trocken und vom Boden weg halten und unter Last fühlen.',
  'problem.night-below-minimum-current':
    'Der Kasten erlaubt {allowedA}, weniger als die {limitA}, die eine Ladesteuerung anfordern kann: es wird nicht geladen.',
  'problem.site-and-codes-decide':
    'Platzregeln und örtliche Vorschriften gehen diesem Plan vor: verlangen sie weniger, dann weniger nehmen. Der Kasten kann seine Leitung mit anderen teilen. Alles hinter seiner Steckdose ist Sache einer Elektrofachkraft.',
  'problem.night-two-loads':
    'Laden und die andere Last zusammen übersteigen, was der Kasten trägt. Nie beides zugleich.',
  'problem.leg-too-long':
    'Die nächste Etappe braucht {needWh} und {reserveWh} Reserve; mit {depart01} fehlen {shortWh}, und kein Halt unterwegs hilft.',
  'problem.water-short': 'Für diese Nacht fehlen {shortMm3} Wasser. Vor der Abfahrt von {site} nachfüllen.',
  'problem.water-short-from-home': 'Für diese Nacht fehlen {shortMm3} Wasser. Mehr mitnehmen oder unterwegs füllen.',
  'problem.food-short': 'Für diese Nacht fehlen {shortG} Essen. Nach {site} einkaufen.',
  'problem.food-short-from-home': 'Für diese Nacht fehlen {shortG} Essen. Mehr mitnehmen oder unterwegs kaufen.',
  'problem.loss-fitted':
    'Der Innenraum verliert {loss01} dessen, was seine Bauart verlöre, nach einer Ablesung der eigenen Nächte, auf {spread01} genau. | Der Innenraum verliert {loss01} dessen, was seine Bauart verlöre, nach {count} Ablesungen der eigenen Nächte, auf {spread01} genau.',
  'problem.consumption-fitted':
    'Das Fahrzeug braucht {use01} des Angegebenen, nach einer gefahrenen Etappe, auf {spread01} genau. | Das Fahrzeug braucht {use01} des Angegebenen, nach {count} gefahrenen Etappen, auf {spread01} genau.',
  'problem.readings-do-not-fit':
    'Eine Ablesung der Nächte passt nicht zum Rest: Uhrzeit, Zähler und Außentemperatur prüfen. | {count} Ablesungen der Nächte passen nicht zueinander: Uhrzeiten, Zähler und Außentemperatur prüfen.',
  'problem.leg-needs-stop':
    'Der nächsten Etappe fehlen ohne Halt {shortWh}: {energyWh} laden ({durationS}) bei {atM}{charger}.',
  'verdict.worst': '{count} Nächte, jeweils die schlechteste:',
  'verdict.holds': 'Geht auf.',
  'verdict.fails': 'Geht nicht auf: ein Grund. | Geht nicht auf: {count} Gründe.',
  'verdict.depart': '{depart01} bei Abfahrt',
  'verdict.margin': '{marginWh} übrig nach der Etappe',
  'verdict.short': '{shortWh} zu wenig für die Etappe ohne Halt',
  'verdict.coldest': 'am kältesten {coldestC} um {coldestUtc}',
  'verdict.moves': 'eine Umlagerung am Abend | {count} Umlagerungen am Abend',
  'verdict.movesNone': 'keine Umlagerung am Abend',
  'move.dusk.step': '{unit} umlagern: {from} › {to}.',
  'move.dusk.wait': '{unit} vorerst abstellen: {from} › {to}.',
  'move.dusk.reason': 'Das Bett braucht den Platz, oder Frost und Griffweite verlangen es.',
  'move.dusk.within': '{unit} in {to} verschieben: {spot}.',
  'move.dawn.within': '{unit} in {to} zurückschieben: {spot}.',
  'from.bed': 'im Bett',
  'from.in-use': 'im Gebrauch',
  'from.outside': 'draußen',
  'from.left-behind': 'zu Hause',
  'to.bed': 'im Bett',
  'to.in-use': 'im Gebrauch',
  'to.outside': 'draußen',
  'to.left-behind': 'zu Hause',
  'spot.front': 'nach vorn',
  'spot.rear': 'nach hinten',
  'spot.left': 'nach links',
  'spot.right': 'nach rechts',
  'spot.up': 'nach oben',
  'spot.down': 'nach unten',
  'spot.turned': 'an seinem Platz drehen',
  'move.dusk.bin': '{piece} aus {bin} nehmen: {to}.',
  'move.dusk.binReason': 'Es wird in der Nacht gebraucht, nicht in seiner Kiste.',
  'move.dawn.bin': '{piece} zurück in {bin} legen.',
  'move.dawn.binReason': 'Loses fliegt bei einem Aufprall.',
  'move.dawn.step': '{unit} zurückstellen: {from} › {to}.',
  'move.dawn.wait': '{unit} vorerst abstellen: {from} › {to}.',
  'move.dawn.reason': 'Die Fahranordnung hält bei einem Aufprall; die Bettanordnung nicht.',
  'remedy.bring-bedding': '{piece} ins Bett nehmen',
  'remedy.bring-piece': '{piece} einpacken',
  'remedy.set-point.up': 'Innenraum {byK} wärmer halten',
  'remedy.set-point.down': 'Innenraum {byK} kühler halten',
  'remedy.charge-limit': 'Bis {to01} laden',
  'remedy.stop-on-the-way': 'Bei {atM} zum Laden halten',
  'remedy.leave-behind': 'Dalassen: {pieces}',
  'remedy.covers': 'Fensterabdeckungen anbringen',
  'remedy.bed-heater': '{heater} benutzen',
  'remedy.current': '{toA} anfordern',
  'remedy.window-gap': 'Fenster {toMm} öffnen',
  'remedy.target-later': '{byMin} später am Ziel sein',
  'remedy.arrive-earlier': '{byMin} früher ankommen',
  'remedy.leave-earlier': '{byMin} früher aufstehen und fahren',
  'remedy.without-hookup': 'Ohne diese Säule übernachten',
  'remedy.turn-piece': '{piece} auf jeder Seite liegen lassen dürfen',
  'remedy.unlock': '{piece} vom festen Platz lösen',
  'remedy.cost.litres': '{litresMm3} Raum',
  'remedy.cost.moves': 'eine Umlagerung mehr | {count} Umlagerungen mehr',
  'remedy.cost.degrees': '{degreesK} weniger Wärme',
  'remedy.cost.charge': '{charge01} Ladung',
  'remedy.cost.minutes': '{costMin} deiner Zeit',
  'remedy.cost.nothing': 'kostet sonst nichts',
  'rules.does-not-fit': 'zu groß für jedes Fach',
  'rules.no-room': 'kein Platz mehr',
  'rules.opening-too-small': 'passt nicht durch die Öffnung',
  'rules.bay-load-limit': 'zu viel Gewicht im Fach',
  'rules.unit-too-heavy': 'zu schwer für das Fach',
  'rules.payload': 'über der Zuladung',
  'rules.front-axle': 'über der Vorderachslast',
  'rules.rear-axle': 'über der Hinterachslast',
  'rules.roof-load': 'über der Dachlast',
  'rules.soft-only': 'nur Weiches erlaubt',
  'rules.freezes': 'es würde gefrieren',
  'rules.spoils': 'es würde zu warm',
  'rules.fuel-in-sleeping-space': 'Brennstoff darf nicht innen übernachten',
  'rules.fuel-in-cabin': 'Brennstoff darf dort nicht mitfahren',
  'rules.food-place': 'Essen muss an den Ort, den der Platz verlangt',
  'rules.outside-not-allowed': 'draußen darf nichts stehen',
  'rules.not-lockable': 'Wertsachen brauchen ein Schloss',
  'rules.restraint': 'nichts hielte es',
  'rules.above-seat-back': 'es ragte über die Lehnen',
  'rules.load-on-top': 'zu viel Last darauf',
  'rules.liquid-above': 'Flüssigkeit läge über Empfindlichem',
  'rules.apart': 'muss getrennt bleiben',
  'rules.locked': 'sein fester Platz ist belegt',
  'rules.closed-by-bed': 'unter dem Bett verschlossen',
  'rules.reach': 'außer Griffweite',
  'rules.site-bay-while-driving': 'dieser Ort fährt nicht mit',
  'problem.over-reach':
    '{unit} wird sofort gebraucht, doch in {bay} steht ein Stück davor. | {unit} wird sofort gebraucht, doch in {bay} stehen {count} Stücke davor.',
  'problem.out-of-reach': '{unit} wird nachts vom Bett aus gebraucht, doch {bay} ist von dort nicht zu erreichen.',
  'problem.rule-unreadable': 'Die Regel „{rule}“ ist nicht lesbar: {message}. Berichtigen oder abschalten.',
  'problem.steps-in-a-circle': '{count} Schritte warten im Kreis aufeinander. Eine Reihenfolge herausnehmen.',
  'problem.steps-too-long':
    'Ein Schritt der Phase „{phase}“ dauert {lateS} länger als Zeit ist. Früher anfangen oder ihn am Vorabend tun. | {count} Schritte der Phase „{phase}“ dauern {lateS} länger als Zeit ist. Früher anfangen oder einiges am Vorabend tun.',
}
