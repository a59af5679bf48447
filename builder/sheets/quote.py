"""Quote: one page for the client.  Of money it shows what he pays and nothing of how it came about.

Live lines are short enough for one line of the page whatever is chosen, since a row keeps its
height when its words change.
"""

from __future__ import annotations

from builder.language import Row, Sheet, joined, of_type, shown, total, when
from builder.language.cells import DASH

from . import inputs as job
from . import inputs_pages as words
from . import inputs_site as site
from . import orders, parts, price, rates, stability
from . import sections as sec

TYPES = "ABCDEF"
IN, NOT_IN = "in", "not in"

sheet = Sheet("Quote", "Quote for a floating dock", scope="page")
block, say, show, note, caution = (sheet.block, sheet.say, sheet.show, sheet.note,
                                   sheet.caution)


def _used(letter: str):
    """Return the test that a section type is built."""
    return of_type(sec.quantity, letter) > 0


def _size(letter: str) -> Row:
    """Say how many of a type are built, how large, on what floats, on which rails."""
    built = joined(f"{letter}: ", shown(of_type(sec.quantity, letter)), " × ",
                   of_type(sec.purpose, letter), ", ", shown(of_type(sec.length, letter), 1),
                   " × ", shown(of_type(sec.width, letter), 1), " ft, on ",
                   shown(of_type(parts.floats, letter)), " × ",
                   of_type(sec.float_model, letter))
    rails = joined(shown(of_type(sec.rail_plies, letter)), "-ply ",
                   of_type(sec.rail_size, letter), " rails")
    show(when(_used(letter), built, DASH), when(_used(letter), rails, DASH), "text")
    return sheet.items[-1].words


def _decking(letters: str) -> Row:
    """Say what decking some types have."""
    said = []
    for letter in letters:
        product = when(of_type(sec.deck, letter).is_("panels"), of_type(sec.panel, letter),
                       of_type(sec.board, letter))
        # A type that is not used has the default product all the same.
        said += ["; " if said else "Deck: ", f"{letter} ", when(_used(letter), product, DASH)]
    return say(joined(*said))


def _rated(letter: str) -> Row:
    """Say how many people a section of a type carries."""
    return say(when(_used(letter), joined(
        f"{letter}, each section: ", shown(of_type(stability.people, letter)),
        " people spread out, at most ", shown(of_type(stability.half_people, letter)),
        " on any one half"), DASH))


show(joined("For ", job.client, ", quote ", words.quote_number), job.job_date, "text")
show(joined("From ", words.builder_name, ", licence:"), words.licence, "text")

block("What we build")
summary = say(joined(
    "Floating dock, ", shown(sum(of_type(sec.quantity, letter) for letter in TYPES)),
    " sections, ", shown(total(parts.deck_area, sec.quantity)), " sq ft, held by ", site.mooring))
size = {letter: _size(letter) for letter in TYPES}
decking = [_decking(TYPES[:3]), _decking(TYPES[3:])]
frame = say(joined("Frame: ", job.wood, ", ", job.sawn, ", treated to ", orders.use_above))
metal = say(joined("Bolts, brackets and screws: ", job.finish, "; one metal in a joint"))

block("Rated load: post it at the dock")
rated = {letter: _rated(letter) for letter in TYPES}

block("In the price, or not")
gangway = show(when(site.gangway_length > 0,
                    joined("Gangway, ", shown(site.gangway_length, 1), " ft"), "Gangway"),
               when(rates.bought["gangway"] > 0, IN, NOT_IN), "text")
power = show("Power and water lines: licensed electrician and plumber, own permit",
             when(rates.bought["power"] > 0, IN, NOT_IN), "text")
disposal = show("Old dock and its foam taken away",
                when(rates.bought["disposal"] > 0, IN, NOT_IN), "text")
also_in = say(joined("Also in: ", words.extra_in))
also_out = say(joined("Also not in: ", words.extra_out))
note("Not in unless written above: survey, engineer's seal, dredging, work on bank and shore, "
     "railings, life ring, reflectors, care in ice and snow, taking out and storing for winter.")

block("Price and payment")
client_total = show(when(rates.invented, "Total. INVENTED PRICES: this is no offer", "Total"),
                    price.client_total, "$")
permit = show(joined("of which permit and fees, at cost; applied for by ", words.permit_by),
              price.fees_outside, "$")
permit_words = sheet.items[-1].words
tax = show("of which sales tax", price.sales_tax, "$")
stages = [show(f"Payment {number}: {label}", amount, "$")
          for number, (label, amount) in enumerate(price.stages, start=1)]

block("Terms")
offer = say(joined("Good for ", shown(rates.validity), " days. Warranty ", shown(rates.warranty),
                   " months from handing it over afloat."))
work = say(joined("Work: ", words.start_words))
insured = say(joined("Insurance: ", words.insurance))
note("Warranty: our work and parts; not ice, storm, overload, boats, want of upkeep. Changes are "
     "written, priced, signed first; so is a bed other than found. Weather, ice, water, permit may "
     "move dates.")

caution("No engineer's design. No swimming near a dock with power. People crowd one edge, snow is "
        "a load: keep to the rated load. Do not burn treated wood or let it touch food.")

show("The owner accepts this quote:\nname, signature, date", blank=True)
show("For the builder:\nname, signature, date", blank=True)
