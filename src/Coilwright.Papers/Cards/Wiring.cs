using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Rules;

namespace Coilwright.Papers.Cards;

/// <summary>What a wiring sheet says beyond the recipe.</summary>
public sealed record Wiring
{
    private const int LongestColour = 30;

    /// <summary>The shop's own lead colours; what is not given is left as a line to fill by hand.</summary>
    public IReadOnlyList<LeadColour> Colours { get; init; } = [];

    /// <summary>The shop's word for the ground lead (cover, screen, base plate); empty leaves a line to fill by hand.</summary>
    public string Ground { get; init; } = "";

    /// <summary>Positions of the switch; empty for the recipe's own connection alone.</summary>
    public IReadOnlyList<SwitchPosition> Positions { get; init; } = [];

    /// <summary>Coils of the instrument's other pickups that positions may name.</summary>
    public IReadOnlyList<CoilSigns> Others { get; init; } = [];

    /// <summary>The side that winding directions are told from.</summary>
    public SeenFrom Side { get; init; } = SeenFrom.Top;

    /// <summary>Every problem with what was entered; none when a sheet can be made of it.</summary>
    /// <param name="coils">The coils of the recipe.</param>
    public IReadOnlyList<Problem> Check(IReadOnlyList<CoilSigns> coils)
    {
        string[] own = [.. coils.Select(coil => coil.Name)];
        string[] known = [.. own, .. Others.Select(coil => coil.Name)];
        List<Problem> problems = [];
        for (int at = 0; at < Colours.Count; at++)
        {
            problems.AddRange(Check(Colours[at], $"colours[{at}]", own));
        }

        problems.AddRange(
            Colours
                .GroupBy(colour => (colour.Coil, colour.End))
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("colours", "this end is given twice", $"{group.Key.Coil}, {group.Key.End}", "each end once"))
        );
        problems.AddRange(
            known
                .GroupBy(name => name)
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("others", "two coils bear this name", group.Key, "a name for each coil"))
        );
        for (int at = 0; at < Positions.Count; at++)
        {
            problems.AddRange(Check(Positions[at], $"positions[{at}]", known));
        }

        return problems;
    }

    private static IEnumerable<Problem> Check(LeadColour colour, string field, string[] own)
    {
        if (!own.Contains(colour.Coil))
        {
            yield return new Problem(field + ".coil", "the recipe has no such coil", colour.Coil, string.Join(", ", own));
        }

        if (colour.End is not ("start" or "finish"))
        {
            yield return new Problem(field + ".end", "a coil has two ends", colour.End, "start, finish");
        }

        if (string.IsNullOrWhiteSpace(colour.Colour) || colour.Colour.Length > LongestColour)
        {
            yield return new Problem(
                field + ".colour",
                "this is no colour word that fits",
                colour.Colour,
                "1 to 30 letters, for example green"
            );
        }
    }

    private static IEnumerable<Problem> Check(SwitchPosition position, string field, string[] known)
    {
        if (position.Sounding.Count == 0)
        {
            yield return new Problem(field + ".sounding", "no coil sounds in this position", position.Name, string.Join(", ", known));
        }

        foreach (string name in position.Sounding.Except(known))
        {
            yield return new Problem(field + ".sounding", "there is no such coil", name, string.Join(", ", known));
        }

        foreach (string name in position.Exchanged.Except(position.Sounding))
        {
            yield return new Problem(
                field + ".exchanged",
                "this coil does not sound in the position",
                name,
                string.Join(", ", position.Sounding)
            );
        }
    }
}
