using System.Globalization;

namespace Coilwright.Workshop.Machines;

/// <summary>Change wheels between spindle and screw: one pair, or two behind each other.</summary>
/// <param name="Driver">Teeth of the wheel on the spindle.</param>
/// <param name="Driven">Teeth of the wheel it drives.</param>
/// <param name="Driver2">Teeth of the second driver, or null.</param>
/// <param name="Driven2">Teeth of the second driven wheel, or null.</param>
public sealed record GearTrain(int Driver, int Driven, int? Driver2 = null, int? Driven2 = null)
{
    /// <summary>Turns of the screw per turn of the spindle.</summary>
    public double Ratio => (double)Driver / Driven * (Driver2 ?? 1) / (Driven2 ?? 1);

    /// <summary>What to put where.</summary>
    public string Words =>
        Driver2 is null
            ? string.Create(CultureInfo.InvariantCulture, $"gear pair {Driver} : {Driven} (spindle : screw)")
            : string.Create(
                CultureInfo.InvariantCulture,
                $"gears {Driver} : {Driven} and {Driver2} : {Driven2} (spindle first, screw last)"
            );

    /// <summary>Every train that a set of wheels can make, each wheel used once.</summary>
    public static IEnumerable<GearTrain> All(IReadOnlyList<int> wheels, int stages)
    {
        for (int a = 0; a < wheels.Count; a++)
        {
            for (int b = 0; b < wheels.Count; b++)
            {
                if (a == b)
                {
                    continue;
                }

                yield return new GearTrain(wheels[a], wheels[b]);
                for (int c = a + 1; stages > 1 && c < wheels.Count; c++)
                {
                    for (int d = b + 1; d < wheels.Count; d++)
                    {
                        if (c != b && d != a && d != c)
                        {
                            yield return new GearTrain(wheels[a], wheels[b], wheels[c], wheels[d]);
                        }
                    }
                }
            }
        }
    }
}
