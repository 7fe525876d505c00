/** German sentences: steps and their reasons, arrival. */
import type { stepsArrival as english } from '../en/steps-arrival.ts'

export const stepsArrival: Record<keyof typeof english, string> = {
  'steps.stop-after-ten-minutes.step': 'Nach zehn Minuten anhalten und fühlen, ob etwas verrutscht ist.',
  'steps.stop-after-ten-minutes.reason': 'Ladung setzt sich in den ersten Kurven.',
  'steps.consumption-at-a-third.step':
    'Nach einem Drittel: wirklichen Verbrauch vergleichen; bei Ankunft sollen es {arrive01} sein.',
  'steps.consumption-at-a-third.reason': 'Wind und Schnee zeigen sich früh, solange noch eine Ladesäule kommt.',
  'steps.charge-before-site.step':
    'Vor dem Platz laden: {arrive01} bei Ankunft ist wenig für einen schwachen Anschluss.',
  'steps.charge-before-site.reason': 'Übliche Praxis: nicht unter 35 bis 40 % an einem unbekannten Stromkasten.',
  'steps.call-if-late.step': 'Den Platz vor Ende der Anmeldezeit anrufen, wenn es später wird: {phone}.',
  'steps.call-if-late.reason': 'Die Ankunft liegt nahe am Ende der Anmeldezeit.',
  'steps.arrive-with-light.step': 'Nicht trödeln: Bei Ankunft bleibt weniger als eine Stunde Licht.',
  'steps.arrive-with-light.reason': 'Begehen, Prüfen und Ausrichten brauchen Tageslicht.',
  'steps.arrive-in-dark.step':
    'Wenn möglich früher losfahren: Ankunft {darkMin} nach Sonnenuntergang. Licht und Kabel obenauf.',
  'steps.arrive-in-dark.reason': 'Äste, weichen Boden und Wasser sieht man im Dunkeln nicht.',
  'steps.perishables-last.step': 'Eis und Gekühltes im letzten Laden kaufen.',
  'steps.perishables-last.reason': 'Unter 4 °C ist das Ziel, zwei Stunden darüber gelten als Grenze.',
  'steps.water-on-the-way.step': 'Unterwegs Wasser nachfüllen: {wantedMm3} werden bis morgen gebraucht.',
  'steps.water-on-the-way.reason': 'Weniger ist an Bord.',
  'steps.last-signal.step': 'Beim letzten guten Netz: Standort senden, Vorhersage lesen, Straßenlage merken.',
  'steps.last-signal.reason': 'Hinter dem nächsten Hügel ist vielleicht keines mehr.',
  'steps.pet-in-heat.step': 'Das Tier tagsüber nie im stehenden Fahrzeug lassen.',
  'steps.pet-in-heat.reason': 'Eine geschlossene Kabine überschreitet in der Sonne in einer halben Stunde 40 °C.',
  'steps.heat-on-the-road.step': '{name} unter {limitC} halten: nicht in {place} lassen, wenn ihr in der Sonne steht.',
  'steps.heat-on-the-road.reason': 'Heute wird es wärmer, als es verträgt.',
  'steps.fuel-vent-on-the-road.step':
    'Ein Fenster einen Spalt offen lassen, solange Brennstoff in der Kabine fährt. Niemand raucht.',
  'steps.fuel-vent-on-the-road.reason': 'Lecks sammeln sich unten und unbemerkt.',
  'steps.check-in.step': 'Bei {site} anmelden: Stellplatznummer, Ausfahrt, Ruhezeit, wen man nachts anruft.',
  'steps.check-in.reason': 'Was jetzt nicht gefragt wird, lässt sich um 03:00 nicht mehr fragen.',
  'steps.ask-gate-code.step': 'Nach dem Schrankencode fragen, und ob er nachts gilt.',
  'steps.ask-gate-code.reason': 'Auf dem Blatt steht keiner.',
  'steps.ask-breaker-reset.step': 'Fragen, wer den Schlüssel zur Sicherung hat und bis wann.',
  'steps.ask-breaker-reset.reason':
    'Löst sie im verschlossenen Kasten aus, gibt es bis zur Öffnung des Büros keinen Strom.',
  'steps.confirm-amps.step': 'Am Empfang bestätigen lassen: erlaubte Ampere zum Laden und Art der Bezahlung.',
  'steps.confirm-amps.reason': 'Aufkleber am Stromkasten und Platzregel weichen oft voneinander ab.',
  'steps.read-meter-start.step': 'Den Zähler fotografieren, bevor etwas eingesteckt wird.',
  'steps.read-meter-start.reason': 'Bezahlt wird die Differenz zweier Stände.',
  'steps.quiet-arrival.step': 'Leise ankommen: Abblendlicht, keine Türen schlagen, nichts laufen lassen.',
  'steps.quiet-arrival.reason': 'Bei der Ankunft gilt schon die Ruhezeit.',
  'steps.walk-the-pitch.step':
    'Den Stellplatz abgehen, bevor ihr hinauffahrt: Äste, Glas, Festigkeit, Neigung, Wasserlauf, Ausfahrt.',
  'steps.walk-the-pitch.reason': 'Was das Tageslicht jetzt zeigt, ist in einer Stunde verborgen.',
  'steps.walk-the-pitch-with-light.step':
    'Den Stellplatz mit Lampe abgehen, bevor ihr hinauffahrt: Äste, Glas, Festigkeit, Neigung, Ausfahrt.',
  'steps.walk-the-pitch-with-light.reason': 'Ihr kommt im Dunkeln an.',
  'steps.soft-ground.step':
    'Mit den Antriebsrädern auf den festesten Teil stellen, keine Ausfahrt bergauf. Matten bereit. Boden: {surface}.',
  'steps.soft-ground.reason': 'Boden, der jetzt trägt, trägt nach Regen oder Tauwetter vielleicht nicht mehr.',
  'steps.hard-pad.step': 'Alle Räder auf der befestigten Fläche lassen.',
  'steps.hard-pad.reason': 'Der Platz verlangt es.',
  'steps.test-post-before-parking.step':
    'Den Stromkasten prüfen, bevor ihr endgültig parkt: Metall spannungsfrei, Sicherung aus und ein, Spannung, Schutzleiter, Polung.',
  'steps.test-post-before-parking.reason':
    'Ein schlechter Kasten kostet jetzt einen Platzwechsel, später den ganzen Aufbau.',
  'steps.test-charging-point.step': 'Eine Minute laden, bevor ihr endgültig parkt.',
  'steps.test-charging-point.reason': 'Ob er eine Karte oder Anmeldung braucht, zeigt sich jetzt.',
  'steps.earth-missing.step': 'Nicht anschließen: Die Dose hat keinen Schutzleiter. Um einen anderen Kasten bitten.',
  'steps.earth-missing.reason':
    'Ein Fehler setzt die Karosserie unter Spannung. Die Reparatur ist Sache von Fachleuten.',
  'steps.earth-not-known.step':
    'Den Schutzleiter vor dem Anschließen mit dem Prüfgerät prüfen und das Ergebnis eintragen.',
  'steps.earth-not-known.reason': 'Ohne Schutzleiter bleibt einem Fehler nur der Weg über einen Menschen.',
  'steps.polarity-reversed.step':
    'Die Polung ist vertauscht: dem Platz melden und vor jedem Griff zum Stecker an beiden Enden ausschalten. Örtliche Regeln beachten.',
  'steps.polarity-reversed.reason': 'Ein einpoliger Schalter lässt dann die spannungsführende Seite verbunden.',
  'steps.polarity-not-known.step': 'Die Polung am Prüfgerät ablesen und eintragen.',
  'steps.polarity-not-known.reason': 'Ältere zweipolige Dosen sind oft verdreht.',
  'steps.park-nose-out.step': 'Rückwärts einparken, Nase zur Ausfahrt.',
  'steps.park-nose-out.reason': 'Das passt am besten zu Ladeanschluss, Neigung und leiser Abfahrt.',
  'steps.park-nose-in.step': 'Vorwärts einparken.',
  'steps.park-nose-in.reason': 'Das passt am besten zu Ladeanschluss, Kabel und Neigung.',
  'steps.inlet-to-post.step':
    'Das Kabel vor dem Ausrichten auf dem wirklichen Weg auslegen: {runMm} vom Kasten zum Ladeanschluss.',
  'steps.inlet-to-post.reason': 'Keile kommen erst, wenn das Kabel reicht.',
  'steps.lead-too-short.step':
    'Das Fahrzeug drehen oder um einen anderen Stellplatz bitten: Das Kabel reicht nicht. Nie straff ziehen.',
  'steps.lead-too-short.reason': 'Ein straffes Kabel lockert seinen Stecker, und der wird heiß.',
  'steps.head-uphill.step': 'Umdrehen oder dieses Ende anheben: Der Kopf läge bergab.',
  'steps.head-uphill.reason': 'Kopf tief macht in einer halben Stunde übel.',
  'steps.level-front.step': 'Mit den Vorderrädern auf Keile von {rampMm} fahren.',
  'steps.level-front.reason': 'Der Stellplatz fällt zur Nase hin ab.',
  'steps.level-rear.step': 'Mit den Hinterrädern auf Keile von {rampMm} fahren.',
  'steps.level-rear.reason': 'Der Stellplatz fällt zum Heck hin ab.',
  'steps.level-left.step': 'Beide linken Räder um {rampMm} anheben.',
  'steps.level-left.reason': 'Der Stellplatz fällt nach links ab und rollt die Schlafenden.',
  'steps.level-right.step': 'Beide rechten Räder um {rampMm} anheben.',
  'steps.level-right.reason': 'Der Stellplatz fällt nach rechts ab und rollt die Schlafenden.',
  'steps.park-brake-and-chocks.step': 'Feststellbremse anziehen und die tiefe Seite mit Keilen sichern.',
  'steps.park-brake-and-chocks.reason': 'Bremsen kühlen ab und geben nach, ein Keil nicht.',
  'steps.uncoil-lead.step': 'Das Kabel ganz abwickeln.',
  'steps.uncoil-lead.reason': 'Eine Rolle unter Last erhitzt sich bis zum Schmelzen.',
  'steps.connect-round-pin.step':
    'Ohne Last anschließen: erst das Fahrzeug, zuletzt der Kasten, einrasten, dann Sicherung ein. Prüftaste des Fehlerstromschutzschalters drücken.',
  'steps.connect-round-pin.reason':
    'So steht kein freier Stecker unter Spannung. Es gelten die örtlichen Vorschriften.',
  'steps.connect-domestic.step':
    'Ohne Last anschließen: erst das Fahrzeug, zuletzt die Steckdose, Stecker ganz hinein, Gewicht abgefangen, Deckel zu.',
  'steps.connect-domestic.reason': 'Eine Haushaltssteckdose ist nicht für Stunden unter Last gebaut.',
  'steps.connect-tt30.step':
    'Bei ausgeschalteter Sicherung anschließen: erst das Fahrzeug, zuletzt die 30-A-Dose, Stecker bündig, dann Sicherung ein. Rund 120 V ablesen, nicht 240.',
  'steps.connect-tt30.reason': 'Diese Dose hat 120 V: Eine Rechnung mit 240 V wäre doppelt so hoch.',
  'steps.connect-split-phase.step':
    'Bei ausgeschalteter Sicherung anschließen: erst das Fahrzeug, zuletzt die große Dose, mit beiden Händen bündig drücken, dann Sicherung ein.',
  'steps.connect-split-phase.reason': 'Ein halb sitzender Kontakt verbrennt bei diesen Strömen.',
  'steps.connect-charging-point.step':
    'Einstecken, auf Verriegeln und Ladebeginn achten. Merken, ob nachts entriegelt werden kann.',
  'steps.connect-charging-point.reason': 'Ein verriegelter Stecker hält euch am Morgen fest.',
  'steps.connect-other.step':
    'Den Platz fragen, wie diese Dose benutzt wird. Ohne Last anschließen: erst das Fahrzeug, zuletzt der Kasten.',
  'steps.connect-other.reason': 'Ihre Bauart kennt der Plan nicht.',
  'steps.hold-household-current.step': 'Den Strom bei {usableA} halten, egal wie viele Stunden bleiben.',
  'steps.hold-household-current.reason':
    'Haushaltssteckdosen erhitzen sich an den Kontakten, lange bevor eine Sicherung auslöst.',
  'steps.start-low.step': 'Niedrig anfangen und den Strom auf {usableA} erhöhen, nicht weiter.',
  'steps.start-low.reason': 'Das ist der kleinste Wert von Sicherung, Platzregel, Kabel, Adapter und Ladegerät.',
  'steps.below-minimum-current.step':
    'Hier nicht laden: Der Anschluss kann den kleinsten Strom nicht liefern, den das Fahrzeug anfordern darf.',
  'steps.below-minimum-current.reason':
    'Ein Ladegerät kann nicht weniger als 6 A anfordern; der Kasten liefe an der Grenze oder gar nicht.',
  'steps.held-after-trip.step': 'Bei {heldA} bleiben: Darüber hat die Sicherung ausgelöst.',
  'steps.held-after-trip.reason': 'Jedes Auslösen erwärmt sie, und das nächste kommt früher.',
  'steps.read-volts.step':
    'Spannung ohne Last und beim Arbeitsstrom ablesen. Unter {stepDownV}: Strom senken. Unter {stopV}: aufhören.',
  'steps.read-volts.reason': 'Ein Anschluss, der einbricht, verheizt Leistung in seinen Leitungen.',
  'steps.enter-readings.step': 'Gelesene Volt und Ampere eintragen. Der Plan rechnet die Nacht neu.',
  'steps.enter-readings.reason': 'Bis dahin beruht er auf dem Aufkleber.',
  'steps.sagging-post.step':
    'Den Strom senken und in zehn Minuten wieder nachsehen: Die Spannung bricht um {sag01} ein.',
  'steps.sagging-post.reason': 'Über 5 % deuten auf lange, dünne oder lockere Leitungen.',
  'steps.drip-loop.step':
    'Vor jedem Ende eine Tropfschlaufe legen, das Kabel vom Weg und jede Kupplung vom Boden fernhalten.',
  'steps.drip-loop.reason': 'Wasser läuft am Kabel entlang in den Stecker.',
  'steps.joint-dry.step': 'Jede Verbindung von Kabel und Adapter abdecken, unten offen.',
  'steps.joint-dry.reason': 'Regen oder Schmelzwasser in einer Kupplung löst nachts aus.',
  'steps.learn-the-site.step':
    'Den Weg zu Toiletten ({toiletsM}), Wasser, Abfall und Ausfahrt lernen, solange man ihn sieht.',
  'steps.learn-the-site.reason': 'Nachts geht man ihn im Halbschlaf.',
  'steps.phone-signal.step':
    'Das Telefon prüfen. Ohne Netz merken, wo das nächste ist. Ort für den Notruf: {coordinates}.',
  'steps.phone-signal.reason': 'Der Notruf fragt zuerst nach dem Ort.',
}
