/** What a printed mock-up is for, and what never. */
export const handOnly =
  'A printed mock-up is for fit, reach and hand: turned by hand with the spindle isolated, never under power.'

/** The same as short as the foot of a sheet has room for. */
export const handTurned = 'Printed mock-up: turn by hand, never under power.'

/** What every report says, whatever the design. */
export const cautions: readonly string[] = [
  'A shop-made rotating tool is unproven until it has been inspected and run up slowly behind a guard.',
  'This report does not replace the manual of the machine, local rules or a licensed practitioner: where they say more, they count.',
  'The never-exceed speed is a safety limit and names its cause. The advised speed is for the life of the edge and protects nobody.',
  'Before power: key out of the drawbar, then one full turn by hand over clamps, vise handles and column.',
  'First run slow, behind a guard, nobody in the plane of the swing. Tighten the screws again after the first minute.',
  'No gloves, loose sleeves or loose hair near a turning spindle.',
  'Hardened steel cracks over a chip, over a gap or under an overtightened screw: clean the slot, seat the bit, keep to the torque.',
  handOnly,
  'Press against a square face: an angled face is no seat, and a loose wedge under it can shoot out. Press before the face is cut, or into a cup bored to it.',
  'Heat evenly and measure the temperature. Hot parts burn, and so do very cold ones; liquid nitrogen in a small room suffocates.',
  'No torch and no weld on what was cleaned with a chlorinated cleaner: the fumes are poison (phosgene). Retaining compounds and plating fume when heated too.',
  'Never weld with the head in the spindle, through the bearings of the machine, or with bit and screws fitted; check the run-out afterwards.',
]
