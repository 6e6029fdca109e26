# What Blockhand says, in English. Short and plain; amounts come in with their units, rounded once.
# Values in braces are filled in; a list joins the messages given for it.

line = { $of }
of-item = { $item }: { $of }
on-date = { $date }: { $of }
item = { $item }

## What is on the table

received-weight = { $item } { $weight }
pieces = { $count } { $count ->
    [one] piece
   *[other] pieces
  }
at-price = { $price }, { $cost } in all
per-pound = { $price }
in-all = { $cost } in all
no-price-yet = no price yet
from-supplier = from { $supplier }
part-weight = { $part } { $weight }
part-plus = { $part } +{ $weight }
part-added = { $part } +{ $added } makes { $weight }
part-share = { $part } { $weight } ({ $share })
without-container = without the { $container }
share = { $share }
weight = { $weight }
size = { $size }
worth = worth { $price }
left = { $weight } to go
none-left = nothing left to weigh
over = { $weight } too much
portions-uncounted = portions { $weight }
portions-uncounted-size = portions: how many, and what they weigh, is not known yet
portions-count = { $count } { $count ->
    [one] portion
   *[other] portions
  }
portions-sized = { $count } { $count ->
    [one] portion
   *[other] portions
  } of { $size }
portion-size = portions of { $size }
portions-weight = portions weigh { $weight }
portions-need-weight = their weight is not known yet
basis-nominal = by size, not weighed
basis-sample = from a sample: { $listed } of { $count } weighed
weights = { $weights }
weights-heard = heard { $weights }; { $listed } on the list, mean { $mean }
already = Already there: { $of }.
usable-cost = usable cost { $cost }
provisional = With { $weight } of portions the usable cost would be { $cost }.

## Prices and the rest

price-set = { $item } is { $price } now
price-set-from = { $item } is { $price } from { $date }
prices-of = { $item }: { $prices }
ready-cut-prices-of = ready-cut { $item }: { $prices }
price-alone = { $price }
price-for-size = for { $size }
price-since = { $of } ({ $date })
price-is = { $item } at { $price }
price-of-item = price of { $item }
price-noted = Price of { $item } noted.
test-keeps-price = the open test keeps its own { $price }
tests-keep-prices = closed tests keep theirs
usable-at-yield = usable cost { $cost } at the yield of { $tests } { $tests ->
    [one] test
   *[other] tests
  }
no-yield-yet = no usable cost yet: no closed test
ready-cut-set = ready-cut { $item } { $price }
ready-cut-of-item = ready-cut price of { $item }
ready-cut-noted = Ready-cut price of { $item } noted.
ready-cut-each = { $price } for { $size }
credit-set = { $part } is worth { $price }
credit-noted = value of { $part } noted
value-of-part = value of { $part }
credit-value = { $weight } of it makes { $value }
already-worth = Already there: { $part } is worth { $price }.
not-weighed-yet = none weighed yet
for-later-tests = for later tests of { $item }
labor = { $minutes } min of labor, { $cost }
minutes = { $minutes } min of labor
labor-none = no minutes
labor-no-rate = { $minutes } min of labor, hourly rate not known
labor-left-out = not in the cost until you say it ("labor is 18 an hour")
labor-fixed = paid anyway, so not counted in the verdict
labor-rate-set = labor { $rate } an hour
labor-rate-from = labor { $rate } an hour from { $date }, for later tests
labor-rate = labor rate
already-rate = Already there: labor { $rate } an hour.
labor-rate-noted = labor rate noted
already-minutes = Already there: { $minutes } min of labor.
packing-each = packing { $cost } a portion
packing-cost = packing { $cost } in all
packing = packing
packing-total = { $cost } in all
packing-noted = packing noted
packing-needs-count = counts once the portions are counted
already-packing = Already there: packing { $cost } a portion.
tare-set = empty { $container } { $weight }, comes off from now on
tare-is = empty { $container } { $weight }
note = note: { $text }
noted = Noted: { $text }
noted-with = Noted with the { $item }: { $text }

## Grinding, cooking, cooling

check-code = Check your local code.
grind-number = grind { $lot }
grind-of = grind { $lot } ({ $part })
grind-weighed = grind { $lot }: { $part } { $weight }
grinding = grinding { $part }
grinding-weighed = grinding { $part } { $weight }
grind-from = from { $of }
grind-from-nothing = no cutting test behind it
grind-not-cleaned = no cleaning of the grinder said before it (was it? "grinder was clean before")
grind-next = Say its labels ("lot 4471 est 245"), what was carried over, and the temperature of each batch ("burger temp 166").
grind-since = Grind { $lot } ({ $part }) was ground { $at }.
grind-keeps = Raw ground meat keeps 1 to 2 days in the cold (USDA FSIS, FDA storage chart).
supplier-lot = supplier lot { $number }
establishment = establishment { $number }
produced = produced { $date }
carried-none = nothing carried over
carried-over = carried over from an earlier lot
carried-weight = { $weight } carried over from an earlier lot
grinder-cleaned = grinder cleaned and sanitized
grinder-cleaned-before = grinder cleaned and sanitized before it
cleaned-told = yes, told { $at }
batch-begun = a batch on the heat
batch-on = { $what } is on. Take its temperature before it leaves the heat.
batch-number = grind { $lot }, batch { $batch }
lot-used = used up
lot-thrown = thrown away
lot-open = open
lot-without-pass = It closes without a passing temperature for each batch.
lot-stays-open = Grind { $lot } stays open: "grind used up" or "threw out the grind" closes it.
no-lot-open = No grind is open. Say "grinding the trim" first.
no-such-lot = There is no open grind { $lot }.
ground-meat = ground meat
raw-meat = raw meat
reading = { $what } { $degrees }
reading-logged = { $what } { $degrees }, logged.
cook-passed = { $what }: { $degrees }, passed (limit { $limit }).
cook-under = { $what }: { $degrees } is under { $limit }. Keep cooking, and check again in { $minutes } min.
cook-under-whole = { $what }: { $degrees } is under { $limit }. Keep cooking and check again in { $minutes } min, unless a whole, uncut steak was ordered rarer and your code allows it.
raw-cold = { $what }: { $degrees }, cold enough (limit { $limit }).
raw-warm = { $what }: { $degrees } is above { $limit }. Chill it now, ask the person in charge. I ring every { $minutes } min until a reading at or below { $limit } is logged.
limit-practice = { $limit } here (common practice for trim ground in house).
limit-set = { $limit } here (this kitchen's own setting).
limit-too-warm = Not set: cold holding is { $code } or below (Food Code 3-501.16), and a kitchen's own limit is never above it.
limit-too-low = Not set: the published minimum for ground meat is { $code } for 17 s (Food Code 3-401.11), and a kitchen's own limit is never below it.
source-ground = Published minimum: { $code } for 17 s (Food Code 3-401.11), { $fsis } (USDA FSIS).
source-needled = Needled or cubed counts as ground: published minimum { $code } for 17 s (Food Code 3-401.11).
source-poultry = Poultry: { $limit } (Food Code 3-401.11 and USDA FSIS).
source-whole = Whole steaks, chops, roasts: { $limit } and 3 min rest (USDA FSIS), { $limit } for 15 s (Food Code 3-401.11).
source-cold = Cold holding: { $cold } or below (Food Code 3-501.16).
source-hold = Cold holding { $cold } or below, hot holding { $hot } or above (Food Code 3-501.16).
source-cooling = Cooked food: from { $hot } to { $seventy } within 2 h, to { $cold } within 6 h in all (Food Code 3-501.14).
source-ice = Crushed ice and water, 30 s (USDA FSIS).
source-boiling = Boiling water at sea level; it boils lower the higher you are (common practice).
source-log = Fields after 9 CFR 320.1(b)(4), which binds official establishments and retail stores.
thermometer-read = { $point ->
    [ice] ice bath
   *[boiling] boiling water
  } { $degrees }
thermometer-right = Thermometer in { $point ->
    [ice] ice
   *[boiling] boiling water
  }: { $degrees }, logged. Within 2 °F (1.1 °C) of { $wanted }.
thermometer-off = Thermometer in { $point ->
    [ice] ice
   *[boiling] boiling water
  }: { $degrees } is more than 2 °F (1.1 °C) off { $wanted }. Adjust it or take another one, and measure again what it measured.
cooling-begun = Cooling { $what }: the clock runs. Say its temperature ("cooling { $what } at 68").
cooling-of = cooling { $what }
cooling-already = { $what } cools already.
cooling-goes-on = { $what }: { $degrees }. Next: { $limit } or below before { $hours } h are over.
cooling-done = { $what }: { $degrees }, cold in time.
cooling-late = { $what }: { $degrees }, but the time for it is over. Ask the person in charge before anybody eats it.
nothing-cools = Nothing is cooling. Say "start cooling the chili" first.
no-lots = Nothing ground yet.
log-file = As a file, { $lots } { $lots ->
    [one] grind
   *[other] grinds
  }: { $file }
log-file-newest = As a file, the newest { $lots } grinds, the earlier ones left out: { $file }
log-checks = Thermometer: { $of }
log-batch-thrown = batch { $batch } thrown away
log-column-lot = grind
log-column-groundAt = ground at ({ $timezone })
log-column-groundBy = ground by
log-column-material = material
log-column-weight = weight ({ $unit })
log-column-from = from cutting tests
log-column-fromWeight = weight in those tests ({ $unit })
log-column-suppliers = suppliers
log-column-supplierLots = supplier lot numbers
log-column-establishments = establishment numbers
log-column-productionDates = production dates
log-column-carriedOver = carried over
log-column-cleanedBefore = grinder cleaned before
log-column-cleanedAfter = grinder cleaned after
log-column-readings = cook temperatures
log-column-batchesPassed = batches passed
log-column-batches = batches
log-column-thermometer = thermometer checks
log-column-closedAt = closed at
log-column-closedAs = closed as
log-cell-reading = { $at } batch { $batch } { $degrees } { $passed ->
    [yes] passed
   *[no] under the limit
  }
log-cell-told = yes, told { $at }
log-cell-check = { $at } { $point ->
    [ice] ice bath
   *[boiling] boiling water
  } { $degrees } { $isOff ->
    [yes] off
   *[no] right
  }
labels = Label: { $of }
grind-stands = { $grind }, ground { $at } by { $by }: { $of }
batch-passed = batch { $batch } passed at { $degrees }
batch-under = batch { $batch } was at { $degrees }, not passed yet
batch-cooking = batch { $batch } is on, no temperature yet
no-batch-yet = nothing cooked yet
no-grind-open = No grind is open.
no-readings = No temperature taken yet.
readings-head = { $count ->
    [one] The last temperature:
   *[other] The last { $count } temperatures:
  }
reading-line = { $at }: { $what } { $degrees }, { $is }
readings-file = As a file, { $count } { $count ->
    [one] temperature
   *[other] temperatures
  }: { $file }
readings-column-at = taken at ({ $timezone })
readings-column-what = what
readings-column-degrees = temperature
readings-column-limit = limit
readings-column-is = outcome
readings-column-by = by
reading-is = { $is ->
    [cook-kept] passed
    [cook-missed] under the limit
    [raw-kept] cold enough
    [raw-missed] too warm
    [cooling-kept] in time
    [cooling-missed] not there yet
   *[logged] logged
  }
no-checks = No thermometer check yet: say what it shows in crushed ice and water ("ice bath 33").
log-checks-head = { $count ->
    [one] The last thermometer check:
   *[other] The last { $count } thermometer checks:
  }
thermometer-was-right = { $point ->
    [ice] ice bath
   *[boiling] boiling water
  } { $degrees }, within 2 °F (1.1 °C)
thermometer-was-off = { $point ->
    [ice] ice bath
   *[boiling] boiling water
  } { $degrees }, OFF by more than 2 °F (1.1 °C)
batch-thrown = a batch thrown away
batch-is-gone = Grind { $lot }, batch { $batch } was thrown away.
no-batch = No batch of grind { $lot } is on the heat. The whole grind? Say "threw out the grind".
binned = { $part } { $weight } thrown away ({ $of }): no grind takes it.
binned-left = { $weight } is left.
binned-figures = Its weight and value in the test are as they were.
binned-plain = { $part } thrown away
binning = throwing away { $part } { $weight }
nothing-to-bin = No { $part } is noted that could be thrown away.
ask-bin-more = { $weight } of { $part } is more than the { $left } that is there. What was thrown away?
not-said = not said
no-weight = weight not said
log-lot = Grind { $lot }, { $at }, by { $by }: { $part }, { $amount }, { $state }
log-material = { $item } { $part } ({ $of })
log-test = test { $test }
log-materials = Materials: { $of }
log-labels = Labels: { $of }
log-carried = Carried over: { $of }
log-cleaned = Grinder cleaned before: { $before }; after: { $after }
log-readings = Temperatures: { $of }
log-passed = batch { $batch } { $degrees } passed ({ $at })
log-under = batch { $batch } { $degrees } under the limit ({ $at })

due-cook = Grind { $lot } ({ $part }) is open: temperature of the batch you cook? Limit { $limit }. Nothing cooked yet? Say it when it is.
due-batch = Grind { $lot } ({ $part }): a batch is on the heat. Its temperature? Limit { $limit }.
due-check = Grind { $lot } ({ $part }) was at { $before }: check again now. Limit { $limit }.
due-check-food = { $what } was at { $before }, under its limit (Food Code 3-401.11): check again now.
due-raw = { $what } was at { $before }, above { $limit }. Chill it now, ask the person in charge, and say its temperature.
ask-reading-of-what = { $degrees } of what? Say it with its name: { $of }.
due-raw-gone = Thrown out? Say "threw out { $lot ->
    [lot] { $what }
   *[none] the raw { $what }
  }".
due-storage = Grind { $lot } ({ $part }) is a day old: raw ground meat keeps 1 to 2 days (USDA FSIS, FDA storage chart). Cook or freeze it.
due-storage-over = Grind { $lot } ({ $part }) is two days old: its storage time is over (USDA FSIS, FDA storage chart). Used up, or thrown away?
due-cooling-seventy = { $what } must be at 70 °F (21.1 °C) or below by now, 2 h after it began to cool (Food Code 3-501.14). Its temperature? If it is not: ask the person in charge.
due-cooling-cold = { $what } must be at 41 °F (5 °C) or below by now, 6 h after it began to cool (Food Code 3-501.14). Its temperature? If it is not: ask the person in charge.

## On weight, end pieces, products, and from the pan

all-on-weight = all { $listed } within ±{ $tolerance }
off-weight = { $under } under and { $over } over ±{ $tolerance }
portion-spread = Portions spread { $spread }
capability = Cp { $cp }, Cpk { $cpk }
given-away-all = In this test overweight gives away { $all }.
given-away = Overweight gives away { $each } a portion, { $all } in this test.
given-away-week = Of late it gives away { $week } a week ({ $tests } tests in the last { $weeks } weeks).
end-piece = end piece { $size }
end-piece-even = End piece { $each }: { $count } of { $size }.
end-piece-trim = { $count ->
    [0] End piece { $each } to trim.
   *[other] End piece { $each }: { $count } of { $size }, the other { $over } to trim (reckoned, not weighed).
  }
end-piece-portion = { $count ->
    [0] End piece { $each }: a portion of its own.
   *[other] End piece { $each }: { $count } of { $size }, and one of { $over } (reckoned, not weighed).
  }
end-piece-no-size = What size are you cutting? Say it first, like "portions of 12 oz".
ask-end-piece = End piece { $each }: { $count } { $count ->
    [one] portion
   *[other] portions
  } of { $size }. The other { $over }: trim, or a smaller portion?
ask-end-piece-small = End piece { $each } is less than { $size }: trim, or a smaller portion?
product = { $part } as a product
cooked-weight = cooked { $weight }
served-weight = served { $weight }
cooking-loss = cooking loss { $weight }, { $raw } of the raw portions ({ $paid } of the weight paid for)
served-share = { $raw } of the raw portions ({ $paid } of the weight paid for)
served-cost = { $what ->
    [cooked] as cooked { $cost }
   *[served] on the plate { $cost }
  }
served-portion = a portion { $cost } ({ $size })
cooked-needs-portions = No portions to cook yet: say first what they weigh.
ask-cooked-heavier = { $weight } is more than the { $from } that went in. What does it weigh?
ask-cooked-half = { $weight } would be { $share } of the raw portions. Is that right, or what does it weigh?
ask-cooked-replace = That was { $before } before. Is { $weight } right?

## Reminders and alarms

reminder = Reminder: { $text }
reminder-plain = Reminder: it is time.
reminder-set = Reminder { $repeat ->
    [daily] every day at { $when }
    [weekly] every { $when }
   *[once] { $when }
  }: { $text }
reminder-set-plain = Reminder { $repeat ->
    [daily] every day at { $when }
    [weekly] every { $when }
   *[once] { $when }
  }
reminder-cancelled = Cancelled: { $of }
reminder-cancelling = cancelling reminder { $number }
no-such-reminder = No reminder like that. There is:
length-of-time = { $is ->
    [minutes] { $minutes } min
    [hours] { $hours } h
   *[both] { $hours } h { $minutes } min
  }
late = (late by { $length }: I was not running, or the clock was wrong)
alarm-unheard = Nobody has acknowledged this for { $length }. Say "got it".
alarm-again = Somebody had this { $length } ago, and it is not settled yet.
acknowledging = { $count ->
    [one] having heard the alarm; it rings again
   *[other] having heard { $count } alarms; they ring again
  }
acknowledged = { $count ->
    [one] Noted: you have it.
   *[other] Noted: you have them, all { $count }.
  }
acknowledged-for = I ring again in { $length } if it is not settled by then.

## Corrections

took-back = Took back: { $what }.
that-leaves = that leaves { $what }
edited = Changed:
edit-nothing = That message recorded nothing, so there is nothing to change. Say it as a new one.
edit-closed = The test of that message is closed, and nothing was changed. Say what to correct as a new message.
edit-unclear = I can't take that edit, and what stood before stands. Say it as a new message, like "no, 1.3".
test-gone = The { $item } test is gone.
open-again = { $item } is open again.
corrected = Corrected: { $what }
removed = { $part } taken out
renamed = { $before } is now { $item }.
already-named = That is { $item } already.
dropped = { $item } test thrown away. "undo" brings it back.
closing = closing { $item }
dropping = throwing away { $item }
turned-to = { $item } it is.
not-recorded = OK, not recorded.
dropped-question = What I asked about before is not recorded.
stands-as-it-is = OK, it stands as it is.
let-go = Not recorded. Say the whole entry again, like "trim 1.1".
say-rest-again = Something else was unclear too: say that again after this.

## The result

closed = { $item } closed.
parts = Cut off: { $parts }
no-portions = No portions weighed.
balances = Everything is accounted for.
cutting-loss = Cutting loss { $weight } ({ $share })
weighed-over = { $weight } more weighed than received ({ $share })
cost-factor = { $factor } × the price paid
portion-cost = a portion of { $size } { $cost }
after-credits = { $credit } taken off for trim
loaded-cost = with { $what ->
    [labor] labor
    [packing] packing
   *[both] labor and packing
  } { $cost }
loaded-portion = a portion { $cost }
portions-heavy = Cut heavy: the mean portion is { $mean } and costs { $cost }, { $difference } given away on each.
portions-light = Cut light: the mean portion is { $mean } and costs { $cost }, { $difference } under target.
portions-heavy-plain = Cut heavy: the mean portion is { $mean } instead of { $size }.
portions-light-plain = Cut light: the mean portion is { $mean } instead of { $size }.
closed-flagged = No cost and no verdict: more was weighed than received. This test stays out of the averages.

## The verdict

verdict-cut = CUT: { $item } at { $cost } is { $saving } cheaper than ready-cut at { $readyCut }.
verdict-buy = BUY: ready-cut { $item } at { $readyCut } is { $saving } cheaper than cutting at { $cost }.
verdict-close-cut = TOO CLOSE TO CALL: cutting { $item } at { $cost } is { $saving } under ready-cut at { $readyCut }, less than the yield may vary.
verdict-close-buy = TOO CLOSE TO CALL: cutting { $item } at { $cost } is { $saving } over ready-cut at { $readyCut }, less than the yield may vary.
verdict-unknown = No verdict on { $item } yet: { $missing }.
verdict-no-tests = No verdict on { $item } yet: no closed test.
verdict-portion-buy = But per portion as cut, buying is { $saving } cheaper: the portions are off their size.
verdict-portion-cut = But per portion as cut, cutting is { $saving } cheaper: the portions are off their size.
verdict-turns = { $choice ->
    [cut] That turns it: CUT { $item } now, { $saving } cheaper than ready-cut.
    [buy] That turns it: BUY ready-cut { $item } now, { $saving } cheaper.
   *[close] That turns it: { $item } is TOO CLOSE TO CALL now.
  }
verdict-turns-from = { $choice ->
    [cut] That turns it from { $date }: CUT { $item }, { $saving } cheaper than ready-cut.
    [buy] That turns it from { $date }: BUY ready-cut { $item }, { $saving } cheaper.
   *[close] That turns it from { $date }: { $item } is TOO CLOSE TO CALL.
  }
verdict-was = { $choice ->
    [cut] That turns it: it was CUT before.
    [buy] That turns it: it was BUY before.
   *[close] That turns it: it was too close to call before.
  }
saving-cut = Cutting saves { $parts }.
saving-buy = Buying saves { $parts }.
saving-portion = { $saving } on a portion of { $size }
saving-test = { $saving } a test
saving-week = { $saving } a week (tests a week: { $tests })
with-labor-counted = If those labor hours would really fall: { $choice ->
    [close] too close to call.
    [cut] CUT by { $saving }.
   *[buy] BUY by { $saving }.
  }
with-labor-fixed = If the labor is paid anyway: { $choice ->
    [close] too close to call.
    [cut] CUT by { $saving }.
   *[buy] BUY by { $saving }.
  }
missing-readyCut = no ready-cut price
missing-price = no purchase price
missing-portions = no portion weight
missing-balance = the weights do not balance
missing-tests = no closed test
turns = It turns at: { $points }.
turn-price = purchase { $price }
turn-price-never = no purchase price, however low
turn-ready-cut = ready-cut { $price }
turn-yield = yield { $yield } (now { $now })
turn-yield-never = no yield (now { $now })
one-test = one test only
first-look = One test behind it: a first look.
several-tests = { $tests } tests behind it.
counted = Counted: { $kinds }.
left-out = Left out: { $kinds }.
kind-purchase = purchase
kind-credits = value of trim
kind-labor = labor
kind-packing = packing
kind-fixedLabor = labor that is paid anyway
kind-laborWithoutRate = labor (no rate known)

## Answers

cost-now = { $item }: usable cost { $cost } at { $price }.
cost-at = { $item } at { $price } would be { $cost } usable.
cost-so-far = { $item }: usable cost { $cost } at { $price } so far
balance-first = { $item }: more is weighed than was received.
open-test-only = from the open test only
yield-pooled = { $share } yield over { $tests } { $tests ->
    [one] test
   *[other] tests
  }
cost-interval = 90 % sure between { $low } and { $high }
price-of = price of { $date }
newest-test = newest test { $date }
nothing-changed = nothing changed
no-prices = No price known yet: say "ribeye is 7.95 now"
list-price = { $item } { $price }
list-usable = usable { $cost }
list-ready = ready-cut { $price }
prices-more = and { $count } more: ask for one by its name.
no-price = No price known for { $item }: say "{ $item } is 7.95 now"
no-tests-yet = No closed test of { $item } yet.
no-portion-cost = No portion cost of { $item } yet: it needs a closed test, a price and a portion size.
yield = yield { $share }
yield-of = { $item }: { $share } yield over { $tests } { $tests ->
    [one] test
   *[other] tests
  }
yield-spread = spread { $points } points between tests
somebody-gone = somebody who left
too-few-to-tell = Too few tests to tell them apart: each needs { $tests }.
difference-is-real = The difference is more than chance (90 %).
difference-may-be-chance = The difference may be chance.
split-alike = Each supplier's pieces were all cut by one cutter: supplier or cutter, this can't tell.
no-supplier-tests = No closed test of { $item } with a supplier: say it with the piece, like "ribeye 14.2 lb at 7.40 from harbor".
yield-so-far = { $item } now on the table: { $share } so far.
history-of = { $item }, { $tests ->
    [one] the last test
   *[other] the last { $tests } tests
  }:
does-not-balance = weights did not balance
order = Buy { $weight } of { $item } for { $count } portions of { $size }, at { $share } yield
tests-behind = { $tests } { $tests ->
    [one] test
   *[other] tests
  } behind it
order-pieces = That is { $pieces } { $pieces ->
    [one] piece
   *[other] pieces
  } like those tested (mean { $weight })
order-sure = For a 90 % chance that it is enough: { $weight } ({ $pieces } { $pieces ->
    [one] piece
   *[other] pieces
  }).
order-not-sure = an amount that is enough nine times in ten takes three tests
plan = { $count } of { $size } out of { $weight }, { $over } left over.
plan-even = Nothing left over at about { $sizes }.
plan-even-size = { $count } × { $size }
plan-nothing-left = Nothing is left of that piece.
menu-price = { $item }: charge { $price } at { $share } food cost ({ $size } costs { $cost }).
portion-loaded = Labor and packing are not in it: with them the portion costs { $cost }.
food-cost = { $item }: at { $price } a portion of { $size } ({ $cost }) is { $share } food cost.
cutting-heavy = { $item } is cut heavy: { $off } over its size in the mean ({ $share })
cutting-light = { $item } is cut light: { $off } under its size in the mean ({ $share })
cutting-on-weight = { $item } is on weight: { $off } off its size in the mean ({ $share })
heavy-behind = { $portions } portions of { $tests } { $tests ->
    [one] test
   *[other] tests
  } in the last { $weeks } weeks, all cutters
heavy-off = of { $listed } weighed singly { $under } under and { $over } over tolerance
heavy-gives-away = Overweight gives away { $portion } a portion, { $test } a test, { $week } a week.
no-portions-weighed = No portions of { $item } weighed against a size in the last { $weeks } weeks.
cost-by-value = { $item } by market value, { $cost } to share:
product-share = { $part } { $weight } at { $value } carries { $share }: { $cost }, { $factor } × the price paid
by-product-method = By the by-product method the portions carry the rest: { $cost }, { $factor } × the price paid.
not-shared-price = No cost to share of { $item } yet: it needs a price above what the trim is worth.
not-shared-products = { $item } has no two products to share its cost: say them like "product tenderloin 3.1 lb worth 18".
not-shared-value = A product of { $item } has no market value yet: say it ("tenderloin is worth 18"; of the portions it is the ready-cut price).
not-shared-balance = { $item }: more is weighed than was received, so its cost is not shared.
no-reminders = No reminders.
reminder-listed = { $number }. { $of }
summary-of-day = { $date }:
summary-of-week = The week to { $date }:
summary-today = Today so far:
summary-yesterday = Yesterday:
summary-week = This week so far:
summary-month = This month so far:
summary-nothing = { $open ->
    [none] Nothing was cut.
   *[some] No piece was finished.
  }
summary-pieces = { $count } { $count ->
    [one] piece
   *[other] pieces
  } cut
summary-more = and { $count } more { $count ->
    [one] cut
   *[other] cuts
  }: ask by name
yield-usual = yield { $share } (usual { $usual })
summary-heavy = cut heavy: { $mean } instead of { $size }
summary-light = cut light: { $mean } instead of { $size }
summary-turned = { $items } turned: { $before ->
    [cut] CUT
    [buy] BUY
   *[close] TOO CLOSE
  } before, { $now ->
    [cut] CUT
    [buy] BUY
   *[close] TOO CLOSE
  } now.
summary-open = Still open: { $items }
summary-lots = { $lots }: no passing temperature yet
summary-lots-batch = { $lots }: a batch without a passing temperature
and-more = and { $count } more
summary-checks = { $count } thermometer { $count ->
    [one] check
   *[other] checks
  }, { $off ->
    [0] all within 2 °F
   *[other] { $off } OFF by more than 2 °F
  } (ice point: USDA FSIS)
summary-unheard = { $count } { $count ->
    [one] alarm
   *[other] alarms
  } that nobody has acknowledged
summary-late = { $count } { $count ->
    [one] reminder
   *[other] reminders
  } told late
costs-hidden = Costs are for the lead and the owner.
settings-not-yours = The kitchen's settings are for the lead and the owner.
nobody-called = Nobody of the team is called { $name }, and nothing was changed. There is: { $people }.
setting-unread = I can't set it to that. Nothing was changed.
setting-as-made = It is as it was before anybody set it.
set-counts = Weights in { $unit ->
    [kg] kilograms
   *[lb] pounds
  }, money in { $currency }, the clock of { $timezone }.
set-no-summary = No daily summary.
set-summary = The summary comes at { $time } each day, to { $to ->
    [team] the team
   *[other] { $to }
  }.
set-limits = Ground meat is cooked to { $ground }, raw meat is { $cold } at most.
set-alarms = An alarm that nobody acknowledges rings again after { $minutes } min, for { $to ->
    [nobody] the team
   *[other] { $to } and the team
  }.
set-costs = { $seen ->
    [all] Cutters see costs.
   *[some] Cutters see no costs.
  } { $labor ->
    [counts] Minutes at the table count in the verdict.
   *[fixed] Labor is fixed: it stays out of the verdict.
  }
set-tolerance = Portions may be { $off } off their size.
set-recordings = { $days ->
    [0] Voice notes are not kept.
    [1] Voice notes are kept for a day.
   *[other] Voice notes are kept for { $days } days.
  }
set-change = The lead and the owner change one by saying it, like "summary at 10 pm" or "cold limit is 38".
setting-name = { $setting ->
    [cuttersSeeCosts] who sees costs
    [laborAvoidable] how labor counts
    [timezone] the time zone
    [summaryAt] when the summary comes
    [summaryTo] who gets the summary
    [weekSummaryOn] the day of the weekly summary
    [tellsEmptyDay] what is said of empty days
    [escalateMinutes] when alarms ring again
    [groundCookF] what ground meat is cooked to
    [coldF] how warm raw meat may be
    [cookAgainMinutes] when a batch is asked for again
    [portionTolerance] how much a portion may be off
    [keepsRecordings] how long voice notes are kept
   *[secondPerson] who is told second
  }
setting-keepsRecordings = { $value ->
    [off] Voice notes are not kept from now on: each is deleted when it was heard, and those kept until now with it.
    [1] Voice notes are kept for a day from now on, on this machine, and then deleted.
   *[other] Voice notes are kept for { $value } days from now on, on this machine, and then deleted.
  }
setting-timezone = Times are in { $value } from now on.
setting-summaryAt = { $value ->
    [off] No daily summary from now on.
   *[other] The summary comes at { $time } each day from now on.
  }
setting-summaryTo = The summary goes to { $value ->
    [team] the team
   *[other] { $value }
  } from now on.
setting-weekSummaryOn = { $value ->
    [off] No weekly summary from now on.
    [monday] The week is told on Mondays, with the daily summary.
    [tuesday] The week is told on Tuesdays, with the daily summary.
    [wednesday] The week is told on Wednesdays, with the daily summary.
    [thursday] The week is told on Thursdays, with the daily summary.
    [friday] The week is told on Fridays, with the daily summary.
    [saturday] The week is told on Saturdays, with the daily summary.
   *[sunday] The week is told on Sundays, with the daily summary.
  }
setting-tellsEmptyDay = { $value ->
    [yes] A day on which nothing is cut is told in one line.
   *[no] A day on which nothing is cut is silent.
  }
setting-escalateMinutes = An alarm that nobody acknowledges rings again after { $value } min.
setting-secondPerson = { $value ->
    [nobody] An alarm that nobody acknowledges goes to the team again.
   *[other] An alarm that nobody acknowledges goes to { $value }.
  }
setting-cuttersSeeCosts = { $value ->
    [yes] Cutters see costs and verdicts from now on.
   *[no] Cutters see no costs from now on: weights and yields only.
  }
setting-groundCookF = Ground meat is cooked to { $value } here from now on.
setting-coldF = Raw meat may be { $value } at most here from now on.
setting-cookAgainMinutes = A batch without a passing temperature is asked for again { $value } min after somebody has heard the alarm.
setting-portionTolerance = Portions may be { $value } off their size from now on.
aloud-name = when answers are read out
aloud = { $when ->
    [always] Every answer is read out to you from now on, in Telegram, in a chat with me alone.
    [heard] What you say is answered aloud too from now on, in Telegram, in a chat with me alone.
   *[never] No answer is read out to you from now on.
  }
aloud-again = { $when ->
    [always] Every answer is read out to you again.
    [heard] What you say is answered aloud again.
   *[never] No answer is read out to you.
  }
rest-written = The rest is written.
setting-laborAvoidable = { $value ->
    [yes] Minutes at the table count in the verdict from now on: hours that would fall if you bought ready-cut.
   *[no] Labor is fixed from now on: it stays in the loaded cost, and out of the verdict.
  }
help =
    Say what you weigh, one thing at a time or several:
    "ribeye 14.2 lb at 7.40" · "trim 1.1" · "fat 1.9" · "12 portions 16 oz" · "portions weigh 11.2"
    "trim is worth 1.50" · "took 25 minutes" · "packing 15 cents each" · "ready cut 9.85" · "done"
    "grinding the trim" · "burger temp 166" · "ice bath 33" · "what temp for ground trim" · "grind log" · "settings"
    Wrong? "no, 1.3" · "that was fat not trim" · "drop the fat" · "undo"
    More: "end piece 18.5" · "product tenderloin 3.1 worth 18" · "share the cost" · "cooked weight 8.9" · "am I cutting heavy" · "food cost at 38"
    Ask: "where are we" · "what's ribeye at" · "ribeye yield" · "cut or buy ribeye" · "how much ribeye for 40 16-ounce" · "how did we do today"
    "picture of the ribeye" · "export ribeye" · "remind me at 3 to check the grind"
    Aloud in Telegram: "read that back" · "speak when I speak" · "speak always" · "stop talking"

## Pictures and files

exported = { $item }, { $tests } { $tests ->
    [one] test
   *[other] tests
  }: { $file }
exported-newest = { $item }, the newest { $tests } tests, the earlier ones left out: { $file }
drawn = { $item }: { $file }
column-item = item
column-closed = closed
column-supplier = supplier
column-cutter = cutter
column-part = { $part } ({ $unit })
column-count = portions (count)
column-minutes = labor (min)
column-labor = labor ({ $currency })
column-packing = packing ({ $currency })
column-loaded-cost = with labor and packing ({ $currency }/{ $unit })
column-received = received ({ $unit })
column-portions = portions ({ $unit })
column-yield = yield (%)
column-price = price ({ $currency }/{ $unit })
column-usable-cost = usable cost ({ $currency }/{ $unit })
column-remark = remark
picture-test = { $item } { $weight }, { $date }
picture-history = { $item }, { $tests ->
    [one] one test
   *[other] the last { $tests } tests
  }
picture-piece = Where the piece went
picture-piece-over = More weighed than received
picture-costs = What a { $unit ->
    [lb] pound
   *[kg] kilo
  } costs
picture-usable = Usable cost of a { $unit ->
    [lb] pound
   *[kg] kilo
  }
picture-compared = Usable cost, as in the verdict
picture-ready-cut = Dashed: ready-cut { $price }
picture-verdict = Now: { $choice ->
    [cut] CUT, { $saving } cheaper
    [buy] BUY, { $saving } cheaper
   *[close] TOO CLOSE TO CALL
  } ({ $tests } { $tests ->
    [one] test
   *[other] tests
  })
picture-yields = Yield over time
picture-band = Shaded: mean of { $tests } tests, 90 % sure
bar-portions = portions
bar-left = not weighed yet
bar-loss = cutting loss
bar-bought = as bought
bar-usable = usable
bar-loaded = with { $what ->
    [labor] labor
    [packing] packing
   *[both] labor and packing
  }
bar-ready-cut = ready-cut
bar-weight = { $weight } · { $share }
bar-price = { $price }
bar-amount = { $amount }
bar-share = { $share }
bar-date = { $date }
file-written = Written to { $what }
file-failed = The file { $what } could not be made.

## What can't be done

nothing-open = No piece on the table. Say what came in, like "ribeye 14.2 lb at 7.40".
no-open-test = No open test of { $item }.
not-weighed = No { $part } in the { $item } test.
nothing-to-undo = Nothing of yours left to take back.
nothing-to-correct = Nothing there to correct: say what, like "make the trim 1.3".

## Questions

ask-which-test = Which one: { $items }?
ask-which-item = Of which cut?
ask-what-item = { $weight } of what?
ask-what-weighs = What weighs that?
ask-tare = What does the { $container } weigh empty?
ask-below-tare = That is no more than the empty { $container } ({ $tare }). What does the { $part } weigh with it?
ask-heavier-than-piece = { $part } { $weight } is more than the whole piece ({ $received }). What does it weigh?
ask-heavier-with-added = { $part } +{ $added } makes { $weight }, more than the whole piece ({ $received }). What was added?
ask-slip = { $part } { $weight } would be { $share } of the piece, usual is { $usual }. Say { $meant } if you meant that. Is { $weight } right?
ask-slip-band = { $part } { $weight } would be { $share } of the piece, as a rule it is { $low } to { $high }. Say { $meant } if you meant that. Is { $weight } right?
ask-far-price = { $item } at { $price }? It was { $before } before. Is that right, or what is the price?
ask-far-price-hidden = That is ten times off the { $item } price before. Is that right, or what is the price?
ask-over-half = { $part } { $weight } would be { $share } of the piece. Say { $meant } if you meant that. Is { $weight } right?
ask-over-half-with-added = { $part } +{ $added } makes { $weight }, { $share } of the piece. Is that right, or what was added?
ask-add-or-replace = { $part } is { $before } already. Add { $weight } to make { $sum }, or replace?
ask-portions-add-or-replace = Already there: { $before }. Add these, or replace?
ask-portions-replace = Already there: { $before }. Replace?
ask-list-or-count = { $listed } weights are on the list, more than { $count }. Add { $count } to them, or replace the list?
ask-list-or-total = The { $listed } on the list weigh { $total }. Add { $weight } to them, or replace the list?
ask-how-many = How many portions are the { $weight }?
ask-what-they-weigh = { $count ->
    [one] What does that portion weigh?
   *[other] What do those { $count } portions weigh together?
  }
ask-labor-add-or-replace = There are { $before } min already. Add to make { $sum }, or replace?
ask-which-lot = Which one: { $lots }? Its number will do.
ask-lot-weight = Is { $weight } what grind { $lot } weighs? It is from { $known } of { $part }. A temperature? Say "grind temp 39".
ask-is-temperature = { $what } { $degrees }: is that a temperature?
ask-portions-weight = { $count } portions of { $size } come to { $due }. Do they weigh { $weight } in all?
ask-portions-each-or-total = { $count } portions of { $size } come to { $due }. Is { $weight } what each weighs, or the total?
ask-next-batch = Is { $degrees } of batch { $batch } of grind { $lot }? That is the next one.
ask-another-lot = Grind { $lot } of { $part } is open. Is this another lot?
ask-raw-or-cooking = { $what } { $degrees }: is that raw, or cooking?
ask-labor-rate = Labor is { $before } an hour already. Change it to { $rate }?
ask-labor-rate-hidden = There is an hourly rate already. Change it?
ask-loose-weights = { $weights }: are those the weights of portions?
ask-more-weights = That makes { $listed } weights for { $count } portions. Are there { $listed }?
ask-overweight = That comes to { $total } out of { $received }, { $over } too much. What do the portions weigh: { $left }, all that is left? { $provisional }
ask-overweight-which = That comes to { $total } out of { $received }, { $over } too much. Which weight is wrong? { $provisional }
ask-another-piece = { $item } { $before } is on the table already. Is { $weight } another piece, or a correction?
ask-far-from-usual = { $item } { $weight }? It usually comes at about { $usual }. Is that right, or what does it weigh?
ask-finish = Close { $item } with { $doubts }? "done" again closes it.
doubt-no-portions = no portion weight
doubt-overweight = { $over } more weighed than received
doubt-unaccounted = { $weight } ({ $share }) unaccounted for
ask-undo-others = { $count ->
    [one] Somebody else has an entry
   *[other] Others have { $count } entries
  } on this { $item }. Take the whole piece back?
ask-correct-which = { $fields ->
    [newPrice-weight] Is that the weight or the price?
    [degrees-newPrice] Is that a temperature or the price?
    [total-weight] Is that the weight or the total?
    [weight-worth] Is that the weight or what it is worth?
    [count-size] Is that the count or the size?
    [count-weight] Is that the count or the weight?
    [size-weight] Is that the size or the weight?
    [minutes-rate] Is that the minutes or the rate?
    [each-newPrice] Is that packing for each, or the price?
   *[other] Which of them is that: count, size or weight?
  }
ask-ready-cut-price = What does ready-cut { $item } cost?
ask-portion-size = { $price } for what size of portion?
ask-portion-size-hidden = For what size of portion?
ask-order-size = { $count } portions of what size?
nothing-so-much = Nothing of yours is that much: say what, like "make the trim 1.3".
several-so-much = More than one of yours is that much: say which, like "make the trim 1.3".
ask-food-cost = { $item }: at what food cost? Say a percentage, like "30 percent".
ask-over-hundred = { $share } is more than the whole price. Which percentage?
ask-price-unit = Is that price a pound or a kilo?
ask-price-or-what-if = { $subject } at that price: new price, or what if?
ask-price-moved = { $subject }: what is the price now?
ask-weight-or-price = { $subject }: is that a weight or a price?
ask-worth = { $part } at { $price }: is that what the { $part } is worth, and not the price of the piece? Say yes, or what it is worth.
ask-weight-or-worth = { $subject }: is that its weight or what it is worth?
ask-count-or-weight = Is that how many portions, or what they weigh?
ask-per-pound-or-total = { $subject }: is that the price by weight, or for all of it?
ask-pieces-weigh = { $subject }: what do they weigh together?
ask-when-none = When? Say a time, like "at 3" or "in 20 minutes".
ask-when-unclear = I can't read that time. Say one, like "at 3:30", "tomorrow at 9" or "every monday at 8".
ask-when-hour = At what hour? Say it like "at 9".
ask-when-repeat = I repeat each day or each week, nothing else. When? Say it like "every day at 8" or "every monday at 8".
ask-when-past = That time is past. When?
ask-half-of-day = "{ $words }": in the morning or the evening? Say the hour with am or pm ("9 pm").
ask-which-reminder = Which one? Say "cancel reminder" and its number.
    { $reminders }
ask-which-day = From which day? Nothing was recorded: say it again with a weekday or a date, like "from monday" or "from december 1".
ask-day-behind = That day of this month is past. Nothing was recorded: say it again with the month, like "from december 1", if you mean { $date }; without a day if it holds already.
ask-only-now = That holds from when it is said, and can't be told for a day to come. Nothing was recorded: say it on that day.
ask-dated-number = Is that a price? Nothing was recorded: say it with "is", like "ribeye is 7.95 from december 1".
ask-rate-or-minutes = Is that the rate an hour, or the minutes?
ask-to-record = "{ $words }": shall I put that down?
ask-two-figures = Two weights for { $subject }. Which one?
ask-two-readings = "{ $words }" can be read in two ways. Say it with units, or one thing at a time.
ask-impossible = "{ $words }" can't be right. What { $slot ->
    [count] is the count
    [pieces] is the number of pieces
    [price] is the price
    [cost] was paid
    [minutes] are the minutes
    [each] is the portion size
    [degrees] is the temperature
   *[other] is the weight
  }?
ask-number = "{ $words }": which number is that? Say it with "point".
ask-trailing = "{ $words }": how many dollars and cents?
ask-list = "{ $words }": say those weights again, each the same way ("sixteen point two").
ask-name = "{ $words }": which cut or part is that?
ask-too-long = That is too long for me, and nothing was recorded. Say it in shorter pieces.
ask-unread = I did not get "{ $words }". Nothing of that was recorded: say the entry again without it.
how-to-type = Still not clear. Type it like this: "trim 1.1" or "12 portions 16 oz".

## Trouble

store-damaged = The kitchen's file is damaged: { $place }. Nothing was recorded. Put a backup in its place.
store-full = The disk is full, so nothing was recorded. Make room, then say it again.
store-readOnly = Can't write to { $place }, so nothing was recorded. Check the folder's permissions.
store-newerVersion = { $place } was written by a newer Blockhand. Install that version, or use another file.
store-inUse = Another Blockhand has { $place } open. Close that one first.
store-notADatabase = { $place } is not a Blockhand database. It was left as it is.
store-unavailable = Can't open { $place }. Check that the folder is there and may be written to.
store-exists = { $place } is there already. Choose another name for the copy.
trouble = Something went wrong on our side and nothing was recorded. Please say it again.

## Hearing

heard = Heard: { $words }
ask-heard = Heard "{ $words }": right?
heard-by = Voice notes are heard by: { $engine }.
heard-nothing = I heard no entry in that, and nothing was recorded. Say it again, close to the phone.
speech-tooLarge = That note is too large, and nothing was recorded. Say it in less than a minute.
speech-tooLong = That note is too long, and nothing was recorded. Say it in less than a minute.
speech-empty = There is no sound in that note, and nothing was recorded.
speech-truncated = That note arrived incomplete, and nothing was recorded. Please send it again.
speech-wrongType = That is no voice note that I can read (OGG/Opus or WAV), and nothing was recorded.
speech-timeout = That took too long to hear, and nothing was recorded. Say it again, or type it.
speech-nonsense = That note can't be read, and nothing was recorded. Please send it again.
speech-unavailable = I can't hear just now, and nothing was recorded. Please type it.
speech-notInstalled = What SPEECH_ENGINE names is not installed, so nothing was heard or recorded. Please type it.
speech-off = Voice notes are off here, and nothing was recorded. Please type it.

unspoken-empty = There is nothing to say in that.
unspoken-tooLong = That is too long to be read out. Say at most 1000 letters.
unspoken-timeout = The voice took too long. Try a shorter text.
unspoken-unavailable = The voice does not work here.

## The terminal

welcome = Blockhand. Say what came in, like "ribeye 14.2 lb at 7.40"; "help" shows more.
welcome-open = On the table: { $items }.
zone-assumed = Times are in { $timezone } (set KITCHEN_TIMEZONE to change it).
not-for-me = (not recorded: no entry in that. "help" shows what I read)
rebuilt-same = { $facts } facts read. The read models were right.
rebuilt-changed = { $facts } facts read. The read models differed and were made anew.
backed-up = Checked copy written to { $place }.

## What listens

port-inUse = PORT { $port } is in use by another program. Stop that one or choose another PORT.
port-denied = This user may not listen on PORT { $port }. Choose one of 1024 or above.
port-noHost = HOST { $host } is no address of this machine, so nothing can listen on PORT { $port } there.

## Telegram

kitchen-made = Made the kitchen { $kitchen }. When the bot starts, it prints the code with which its owner claims it.
kitchen-there = There is a kitchen { $kitchen } already.
kitchen-usage = kitchen NAME (small letters, digits and dashes)
telegram-claim = Nobody owns the kitchen "{ $kitchen }" yet. Send the bot this within 24 hours, once: /start { $code }
telegram-refused = Telegram does not know TELEGRAM_BOT_TOKEN. Check it.
telegram-welcome = Blockhand. Say what came in, like "ribeye 14.2 lb at 7.40"; "help" shows more.
telegram-joined = Welcome, { $name }. { $role ->
    [owner] You own this kitchen. "invite a cutter" or "invite a lead" gives you a link for them.
    [lead] You are a lead here. "invite a cutter" gives you a link for one.
   *[cutter] You are a cutter here: say what you weigh. Costs go to the lead and the owner.
  } "help" shows what I read.
telegram-invite =
    A link for { $role ->
        [owner] an owner
        [lead] a lead
       *[cutter] a cutter
      }, good once and for { $hours } hours: { $link }
telegram-removed = { $name } is no longer of the team.
telegram-last-owner = That is the only owner. Invite another one first.
telegram-not-yours = That is not yours to do: ask the owner.
telegram-stranger = This is a kitchen's own assistant. Ask the kitchen for an invite.
telegram-group = I work in the groups of my kitchens alone: an owner must bring me in. So I leave this one.
telegram-group-joined = This group is of the kitchen now. Say what you cut here, or in a chat with me alone. Costs are told in chats with me alone.
telegram-group-unreachable = I can't write to one of your groups any more.
telegram-elsewhere = You are of another kitchen already. Its lead must remove you before you can join a second one.
telegram-privately = Ask me that in a chat with me alone: the link is a key.
telegram-repeat = (This may come twice.)
telegram-hearing-slow = I am still listening to that note, and nothing of it is recorded yet. The answer comes when I am done.
telegram-note-gone = I can't get at that voice note, and nothing was recorded. Please send it again, or type it.
telegram-secondhand = What was forwarded or sent through another bot is no entry. Say it yourself.
telegram-unread = I read text and hear voice notes only, and nothing was recorded.
telegram-too-long = That is too long for one message, and nothing of it was recorded. Say it in parts.
telegram-too-fast = Too many messages at once: from this one on I leave out what comes, until it is calmer. Then say them again.
telegram-noted = Noted.
telegram-parked = Something is wrong on our side with one of your messages, and nothing of it was recorded. Say it in other words.
telegram-unknown = (A message of mine may not have reached you.)
telegram-unreachable = I can't write to { $name } any more: the chat is closed or blocked.

## Telegram: cards and buttons

said-by = { $name }:
press-stale = That button is old: look at what stands now.
press-not-yours = That is for { $name } to press.
button = { $word ->
    [undo] Undo
    [finish] Done
    [again] Show it again
    [acknowledge] Got it
    [yes] Yes
    [no] No
    [add] Add
    [replace] Replace
    [newPrice] New price
    [whatIf] What if
    [weight] Weight
    [worth] Worth
    [anotherPiece] Another piece
    [each] Each
    [total] In all
    [pound] Per pound
    [perUnit] Per pound or kilo
    [kilo] Per kilo
    [count] Count
    [size] Size
    [minutes] Minutes
   *[rate] Rate
}
