/** What every report says, whatever the design. */
export const cautions: readonly string[] = [
  'A shop-made rotating tool is unproven until it has been inspected and run up slowly behind a guard.',
  'This report does not replace the manual of the machine, local rules or a licensed practitioner: where they say more, they count.',
  'Before power: key out of the drawbar, then one full turn by hand over clamps, vise handles and column.',
  'First run slow, behind a guard, nobody in the plane of the swing. Tighten the screws again after the first minute.',
  'No gloves, loose sleeves or loose hair near a turning spindle.',
  'Hardened steel cracks over a chip, over a gap or under an overtightened screw: clean the slot, seat the bit, keep to the torque.',
  'A printed mock-up is for fit, reach and hand: turned by hand with the spindle isolated, never under power.',
]
