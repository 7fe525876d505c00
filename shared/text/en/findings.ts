/** English sentences for what the plan finds, its verdict, its moves and its remedies. Flat keys; `{name}` is filled in; "one | many" chooses by `count`. */
export const findings = {
  'problem.leave-in-movement-ban':
    'Leaving at {departUtc} falls in the movement ban until {banToUtc}. Ask for a place outside the barrier the evening before, or leave {lostS} later, when the ban ends.',
  'problem.leave-home-after-arrival':
    'You leave home on {leaveDayUtc}, but are to arrive at {site} on {arriveDayUtc}. Put leaving earlier, or the first arrival later.',
  'problem.back-home-before-leaving':
    'You are back home on {backDayUtc}, but leave {site} on {departDayUtc}. Put coming back later, or the last morning earlier.',
  'problem.leave-before-gate':
    'Leaving at {departUtc} is before the gate opens at {gateToUtc}. Ask for the code or a place outside, or leave {lostS} later.',
  'problem.leave-in-quiet-hours':
    'Leaving at {departUtc} is inside quiet hours (until {quietToUtc}). Stow and unplug silently, no slammed doors; set up to drive off the night before.',
  'problem.leave-after-check-out':
    'Leaving at {departUtc} is after check-out at {checkOutUtc}. Wake earlier or ask for a later check-out.',
  'problem.arrive-after-check-in':
    'Arriving at {arriveUtc} is after check-in closes at {closesUtc}. Call the site, or arrive earlier.',
  'problem.arrive-before-check-in': 'Arriving at {arriveUtc} is before check-in opens at {opensUtc}.',
  'problem.arrive-after-gate':
    'Arriving at {arriveUtc} is after the gate closes at {gateFromUtc}. Call the site, or arrive earlier.',
  'problem.arrive-in-movement-ban':
    'Arriving at {arriveUtc} falls in the movement ban from {banFromUtc}: no vehicle may drive onto its pitch then. Arrive earlier, or ask for a place outside the barrier.',
  'problem.arrive-in-the-dark':
    'Arriving at {arriveUtc}, with sunset at {sunsetUtc}: pitch, post and bed want {wantedS} of light.',
  'problem.wake-earlier':
    'Wake at {neededUtc}, not {plannedUtc}: leaving is at {departUtc} and the morning takes {morningS}.',
  'problem.unplug-before-leaving':
    'Unplugging is planned for {unplugUtc}, later than leaving at {departUtc}. The plan counts charge only until leaving.',
  'problem.no-sunrise': 'The sun does not rise at {target} that day: no time to be there can be computed.',
  'problem.sleeping-not-allowed': '{site} does not allow sleeping in the vehicle. Choose another site.',
  'problem.ask-about-sleeping':
    'Not known whether {site} allows sleeping in this kind of vehicle. Ask in those words before paying.',
  'problem.charging-not-allowed':
    '{site} does not allow charging a vehicle from the post. The plan does not charge there.',
  'problem.ask-about-charging':
    'Not known whether {site} allows charging a vehicle from the post. Ask at what current, and how it is paid.',
  'problem.food-locker-missing':
    '{site} wants food in a locker, and no locker is known. Ask for its inside size and enter it.',
  'problem.adapter-not-on-board':
    '{adapter} is needed at {site} and is not in the load. Pack it, or this night has no supply.',
  'problem.lead-too-short':
    'The lead does not reach over the {runMm} to the post as parked. Turn the vehicle or move closer before levelling.',
  'problem.lead-wants-extension':
    'The lead does not reach over the {runMm} to the post as parked. Turn the vehicle, move closer, or fetch {extension} before levelling.',
  'problem.head-low':
    'The head end would lie {riseMm} low. Turn the vehicle round, or put ramps of {rampMm} under the low wheels.',
  'problem.bed-too-short': '{traveller} is {heightMm} tall; the bed is flat for only {flatMm}.',
  'problem.bed-just-long-enough': '{traveller} is {heightMm} tall on {flatMm} of flat bed: little to spare.',
  'problem.bed-too-narrow': 'The bed is {widthMm} wide; {neededMm} is the least for this many sleepers.',
  'problem.bed-step': 'A step of {stepMm} will be felt through the mat; pad it to under {limitMm}.',
  'problem.lie-only': '{headroomMm} over the mattress: enough to lie, not to sit up.',
  'problem.no-place-by-day': '{unit} finds no place in the drive layout: {rules}.',
  'problem.no-place-at-night': '{unit} finds no place in the bed layout: {rules}.',
  'problem.over-payload': 'The load is {amountG}; the vehicle may carry {limitG}. Take out {overG}.',
  'problem.over-front-axle':
    'The front axle would carry {amountG}; its limit is {limitG}. Move weight back or leave {overG}.',
  'problem.over-rear-axle':
    'The rear axle would carry {amountG}; its limit is {limitG}. Move weight forward or leave {overG}.',
  'problem.over-roof-load': 'The roof would carry {amountG}; its limit is {limitG}. Take {overG} down.',
  'problem.over-bay-load-limit': '{bay} would carry {amountG}; its limit is {limitG}.',
  'problem.over-unit-too-heavy': 'A piece in {bay} weighs {amountG}; the limit there is {limitG}.',
  'problem.changeover-stuck': '{unit} cannot be brought to its night place by any order of moves found.',
  'problem.load-fuel-in-cabin':
    '{unit} rides in {bay}, inside the cabin. Keep it upright, tied, away from people, and air the cabin; outside is better where a place allows.',
  'problem.load-unrestrained':
    '{unit} in {bay} is held by nothing. At 50 km/h it would pull with {lowKn} to {highKn}. Tie it down or move it behind a barrier.',
  'problem.load-above-seat-back':
    '{unit} in {bay} stands above the seat backs. Put a net or barrier before it, or move it down.',
  'problem.load-heavy-high': '{unit} is heavy and rides high in {bay}. Move it down.',
  'problem.too-cold-for-bag':
    '{traveller} is {shortK} short of warm by the bag’s rating: {coldestC} at the bed, from {fromUtc}. Bring warmer bedding or hold more heat.',
  'problem.too-cold-for-body':
    '{traveller} loses more heat than a sleeper makes: {shortK} short, {coldestC} at the bed, from {fromUtc}. Bring warmer bedding or hold more heat.',
  'problem.name-sounds-like-fuel':
    '{piece} sounds like fuel or gas, but nothing marks it so. Tick “burns or under pressure” in the kit: it is then kept out of the sleeping space.',
  'problem.cool-sleeper':
    '{traveller} is {shortK} short of warm enough at {coldestC}: put on one more layer, or hold more heat.',
  'problem.cold-feet':
    '{traveller}: cold feet after {fromUtc} ({feetC} at the feet). Dry socks, hot bottle, feet off the tailgate.',
  'problem.night-co2-high': 'Carbon dioxide reaches {co2Ppm}. Open the windows wider, on two sides.',
  'problem.night-no-fresh-air':
    'Hardly any fresh air with everything shut: carbon dioxide reaches {co2Ppm}. Open a gap of 10 to 15 mm on two sides.',
  'problem.night-shared-wiring':
    'Volts sag by {sag01} under this load: the wiring is long, thin or shared, and they fall further as neighbours heat. Read them again at bedtime.',
  'problem.night-domestic-socket':
    'A household socket for hours on end: hold the current low, feel the plug at 10 and 60 minutes, stop if it is hot. Local codes and the site’s electrician decide.',
  'problem.night-adapter':
    'An adapter carries the whole current and protects against nothing: hold it to its own rating, keep it dry and off the ground.',
  'problem.night-polarity-reversed':
    'Polarity is reversed at this post. Some charging units refuse it; a single switch may not make a circuit dead. Tell the host; use an adapter made for it only if you have one.',
  'problem.night-earth-missing': 'No earth at this post. Do not plug in; tell the host.',
  'problem.night-earth-not-known': 'Earth not tested. Test it before plugging in.',
  'problem.night-sag-step-down': 'Volts fall to {lowV} under this load: step the current down, or draw none.',
  'problem.night-sag-stop': 'The post gives no more than {lowV}: do not charge here, and tell the site.',
  'problem.night-cold-illness':
    '{tempC} at the bed. Shivering, confusion or slurred speech is an emergency: warm the person and call for help.',
  'problem.night-heat-illness':
    '{tempC} at the bed. Headache, hot dry skin or confusion is an emergency: cool the person and call for help.',
  'problem.night-heater-stops':
    'Heating stops at {atUtc}: the supply ends, the battery reaches its reserve, or the vehicle switches itself off. Plan the bed for no heat after that.',
  'problem.night-carbon-monoxide':
    'Carry a carbon monoxide alarm and burn nothing inside; a neighbour’s fire or generator is enough.',
  'problem.night-leisure-frost':
    'From {atUtc} the leisure battery is below freezing: do not charge it then unless its maker allows it.',
  'problem.night-leisure-acid-frost':
    'From {atUtc} the acid of the leisure battery may freeze at its charge: keep it fuller or warmer, and never charge it frozen; a split case leaks acid.',
  'problem.night-extension-lead':
    'Unroll the lead fully, hold it to its own rating, keep its joints dry and off the ground, and feel them under load.',
  'problem.night-below-minimum-current':
    'The post allows {allowedA}, less than the {limitA} that charging control can ask for: it will not charge.',
  'problem.site-and-codes-decide':
    'Site rules and the local electrical code go before this plan: where they ask for less, take less. The post may share its wiring with others. Leave everything behind its outlet to a licensed electrician.',
  'problem.night-two-loads': 'Charging and the other load together pass what the post carries. Never run both.',
  'problem.leg-too-long':
    'The next leg needs {needWh} and {reserveWh} in reserve; leaving with {depart01} is {shortWh} short, and no stop on the way mends it.',
  'problem.water-short': 'Water for this night is {shortMm3} short. Fill up before leaving {site}.',
  'problem.water-short-from-home': 'Water for this night is {shortMm3} short. Bring more, or fill up on the way.',
  'problem.food-short': 'Food for this night is {shortG} short. Buy some after {site}.',
  'problem.food-short-from-home': 'Food for this night is {shortG} short. Bring more, or buy on the way.',
  'problem.loss-fitted':
    'The cabin loses {loss01} of what its body class would, by one reading of your own nights, give or take {spread01}. | The cabin loses {loss01} of what its body class would, by {count} readings of your own nights, give or take {spread01}.',
  'problem.consumption-fitted':
    'The vehicle uses {use01} of what was said, by one leg driven, give or take {spread01}. | The vehicle uses {use01} of what was said, by {count} legs driven, give or take {spread01}.',
  'problem.readings-do-not-fit':
    'One reading of your nights does not agree with the rest: check clock, meter and outside temperature. | {count} readings of your nights do not agree with one another: check clocks, meter and outside temperature.',
  'problem.leg-needs-stop':
    'The next leg is {shortWh} short without a stop: charge {energyWh} ({durationS}) at {atM}{charger}.',
  'verdict.worst': '{count} nights, the worst of each:',
  'verdict.holds': 'Holds.',
  'verdict.fails': 'Does not hold: one reason. | Does not hold: {count} reasons.',
  'verdict.depart': '{depart01} at departure',
  'verdict.margin': '{marginWh} in hand after the leg',
  'verdict.short': '{shortWh} short after the leg without a stop',
  'verdict.coldest': 'coldest {coldestC} at {coldestUtc}',
  'verdict.moves': 'one move at dusk | {count} moves at dusk',
  'verdict.movesNone': 'no moves at dusk',
  'move.dusk.step': 'Move {unit}: {from} › {to}.',
  'move.dusk.wait': 'Set {unit} down for now: {from} › {to}.',
  'move.dusk.reason': 'The bed needs its room, or frost and reach do.',
  'move.dusk.within': 'Shift {unit} within {to}: {spot}.',
  'move.dawn.within': 'Shift {unit} back within {to}: {spot}.',
  'from.bed': 'in the bed',
  'from.in-use': 'in use',
  'from.outside': 'outside',
  'from.left-behind': 'left at home',
  'to.bed': 'in the bed',
  'to.in-use': 'in use',
  'to.outside': 'outside',
  'to.left-behind': 'left at home',
  'spot.front': 'towards the front',
  'spot.rear': 'towards the rear',
  'spot.left': 'to the left',
  'spot.right': 'to the right',
  'spot.up': 'up',
  'spot.down': 'down',
  'spot.turned': 'turn it in its place',
  'move.dusk.bin': 'Take {piece} out of {bin}: {to}.',
  'move.dusk.binReason': 'It is wanted at night, not in its bin.',
  'move.dawn.bin': 'Put {piece} back into {bin}.',
  'move.dawn.binReason': 'Loose things fly in a crash.',
  'move.dawn.step': 'Put {unit} back: {from} › {to}.',
  'move.dawn.wait': 'Set {unit} down for now: {from} › {to}.',
  'move.dawn.reason': 'The drive layout holds in a crash; the bed layout does not.',
  'remedy.bring-bedding': 'Use {piece} in the bed',
  'remedy.bring-piece': 'Pack {piece}',
  'remedy.set-point.up': 'Hold the cabin {byK} warmer',
  'remedy.set-point.down': 'Hold the cabin {byK} cooler',
  'remedy.charge-limit': 'Charge to {to01}',
  'remedy.stop-on-the-way': 'Stop at {atM} to charge',
  'remedy.leave-behind': 'Leave behind: {pieces}',
  'remedy.covers': 'Hang the window covers',
  'remedy.bed-heater': 'Run {heater}',
  'remedy.current': 'Ask for {toA}',
  'remedy.window-gap': 'Open the windows to {toMm}',
  'remedy.target-later': 'Be at the target {byMin} later',
  'remedy.arrive-earlier': 'Arrive {byMin} earlier',
  'remedy.leave-earlier': 'Get up and leave {byMin} earlier',
  'remedy.without-hookup': 'Sleep without this post',
  'remedy.turn-piece': 'Let {piece} lie on any side',
  'remedy.unlock': 'Free {piece} from its fixed place',
  'remedy.cost.litres': '{litresMm3} of room',
  'remedy.cost.moves': 'one more move | {count} more moves',
  'remedy.cost.degrees': '{degreesK} less warmth',
  'remedy.cost.charge': '{charge01} of charge',
  'remedy.cost.minutes': '{costMin} of your time',
  'remedy.cost.nothing': 'costs nothing else',
  'rules.does-not-fit': 'too large for any bay',
  'rules.no-room': 'no room left',
  'rules.opening-too-small': 'does not pass the opening',
  'rules.bay-load-limit': 'too much weight in the bay',
  'rules.unit-too-heavy': 'too heavy for the bay',
  'rules.payload': 'over the payload',
  'rules.front-axle': 'over the front axle limit',
  'rules.rear-axle': 'over the rear axle limit',
  'rules.roof-load': 'over the roof limit',
  'rules.soft-only': 'only soft things may go there',
  'rules.freezes': 'it would freeze',
  'rules.spoils': 'it would get too warm',
  'rules.fuel-in-sleeping-space': 'fuel may not sleep inside',
  'rules.fuel-in-cabin': 'fuel may not ride there',
  'rules.food-place': 'food must go where the site wants it',
  'rules.outside-not-allowed': 'nothing may stand outside',
  'rules.not-lockable': 'valuables need a lock',
  'rules.restraint': 'nothing would hold it',
  'rules.above-seat-back': 'it would stand above the seat backs',
  'rules.load-on-top': 'too much on top',
  'rules.liquid-above': 'a liquid would lie above what it spoils',
  'rules.apart': 'must be kept apart',
  'rules.locked': 'its fixed place is taken',
  'rules.closed-by-bed': 'shut in by the bed',
  'rules.reach': 'out of reach',
  'rules.site-bay-while-driving': 'that place does not travel',
  'problem.over-reach':
    '{unit} is wanted at once, but one thing stands before it in {bay}. | {unit} is wanted at once, but {count} things stand before it in {bay}.',
  'problem.out-of-reach': '{unit} is wanted from the bed at night, but {bay} is out of reach from there.',
  'problem.rule-unreadable': 'The rule “{rule}” cannot be read: {message}. Mend or switch it off.',
  'problem.steps-in-a-circle': '{count} steps wait for one another in a circle. Take one order away.',
  'problem.steps-too-long':
    'A step of the phase “{phase}” takes {lateS} longer than there is. Start earlier, or do it the evening before. | {count} steps of the phase “{phase}” take {lateS} longer than there is. Start earlier, or do some the evening before.',
} as const
