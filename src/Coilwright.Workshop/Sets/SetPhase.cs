using System.Globalization;
using Coilwright.Analysis.Pairing;
using Coilwright.Workshop.Polarity;

namespace Coilwright.Workshop.Sets;

/// <summary>Phase and hum of a set: of any two of its pieces, and of any more that a switch lets sound together.</summary>
/// <param name="Positions">Every choice of two or more places, in order, with its answer.</param>
public sealed record SetPhase(IReadOnlyList<(IReadOnlyList<string> Places, PhaseAnswer Answer)> Positions)
{
    /// <summary>True when two pieces work against each other in some position.</summary>
    public bool IsRed => Positions.Any(position => position.Answer.InPhase == false);

    /// <summary>The answer for every piece together, in words.</summary>
    public string Words =>
        Positions.FirstOrDefault(position => position.Answer.InPhase == false) is { Answer: { } red } clash
            ? $"{string.Join(" and ", clash.Places)}: {red.Words}"
            : string.Join(
                "; ",
                Positions
                    .Where(position => position.Places.Count == 2)
                    .Select(position => $"{string.Join(" and ", position.Places)}: {position.Answer.Words}")
            );

    /// <summary>From the signs of the pieces' coils, each joined as its recipe joins it.</summary>
    /// <param name="places">Name of each place with the coils that stand there.</param>
    public static SetPhase Of(IReadOnlyList<(string Place, IReadOnlyList<CoilSigns> Coils)> places)
    {
        CoilSigns[] all = [.. places.SelectMany(place => place.Coils.Select(coil => coil with { Name = Named(place.Place, coil) }))];
        List<(IReadOnlyList<string>, PhaseAnswer)> positions = [];
        foreach (int chosen in Enumerable.Range(1, (1 << places.Count) - 1).Where(bits => int.PopCount(bits) > 1).OrderBy(int.PopCount))
        {
            (string Place, IReadOnlyList<CoilSigns> Coils)[] sounding = [.. places.Where((_, at) => (chosen >> at & 1) == 1)];
            string[] names = [.. sounding.Select(place => place.Place)];
            positions.Add(
                (
                    names,
                    new SwitchPosition(
                        string.Join(" + ", names),
                        [.. sounding.SelectMany(place => place.Coils.Select(coil => Named(place.Place, coil)))],
                        []
                    ).Answer(all)
                )
            );
        }

        return new SetPhase(positions);
    }

    /// <summary>Hum left of a position in words; nothing is claimed below what a turns counter can tell of two equal coils.</summary>
    public static string HumWords(PhaseAnswer answer)
    {
        double least = HumResidue.Level(1, 1).High;
        if (answer.HumLevelDb >= 0)
        {
            return "all of it";
        }

        string below = answer.HumLevelDb < least ? "below " : "";
        return string.Create(CultureInfo.InvariantCulture, $"{below}−{Math.Abs(Math.Max(least, answer.HumLevelDb)):0} dB");
    }

    private static string Named(string place, CoilSigns coil) => $"{place}/{coil.Name}";
}
