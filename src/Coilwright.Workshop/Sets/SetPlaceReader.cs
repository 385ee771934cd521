using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Sets;

/// <summary>Reads the places of a set as people type them.</summary>
public static partial class SetPlaceReader
{
    /// <summary>Fewest and most places of a set.</summary>
    public const int Fewest = 2,
        Most = 4;

    private const int LongestName = 40;
    private const double LargestOffsetDb = 12;
    private const string Range = "−12 dB to +12 dB, for example +1.5 dB";

    /// <summary>A place in one line: "bridge: Harbour bridge +1.5 dB".</summary>
    public static SetPlace Line(string typed)
    {
        string[] parts = typed.Split(':', 2);
        Match offset = Offset().Match(parts[^1]);
        return new SetPlace(
            parts.Length > 1 ? parts[0].Trim() : "",
            parts[^1][..(offset.Success ? offset.Index : parts[^1].Length)].Trim(),
            offset.Value.Trim()
        );
    }

    /// <summary>The wanted offsets, dB; with every problem of the places added.</summary>
    /// <param name="places">As typed.</param>
    /// <param name="problems">Where problems go: "places", "offset".</param>
    public static IReadOnlyList<double> Offsets(IReadOnlyList<SetPlace> places, ICollection<Problem> problems)
    {
        if (places.Count is < Fewest or > Most)
        {
            problems.Add(
                new Problem(
                    "places",
                    "a set is of two to four pieces",
                    places.Count.ToString(CultureInfo.InvariantCulture),
                    "2 to 4 places"
                )
            );
        }

        foreach (SetPlace place in places)
        {
            if (place.Name.Trim().Length is 0 or > LongestName || place.Name.Any(char.IsControl))
            {
                problems.Add(
                    new Problem(
                        "places",
                        "which place is this?",
                        $"{place.Name}: {place.Of}".Trim(' ', ':'),
                        "a word such as neck, middle, bridge; 40 letters at most"
                    )
                );
            }

            if (place.Of.Trim().Length == 0)
            {
                problems.Add(new Problem("places", $"what stands at {place.Name}?", null, "a recipe, or the serial of a piece"));
            }
        }

        foreach (
            IGrouping<string, SetPlace> same in places
                .GroupBy(place => place.Name.Trim(), StringComparer.OrdinalIgnoreCase)
                .Where(same => same.Key.Length > 0 && same.Count() > 1)
        )
        {
            problems.Add(new Problem("places", "this place is named twice", same.Key, "a word of its own for each place"));
        }

        return [.. places.Select(place => OffsetOf(place, problems))];
    }

    private static double OffsetOf(SetPlace place, ICollection<Problem> problems)
    {
        string typed = place.Offset.Trim();
        if (typed.Length == 0)
        {
            return 0;
        }

        if (TryDecibels(typed, out double db) && Math.Abs(db) <= LargestOffsetDb)
        {
            return db;
        }

        problems.Add(new Problem("offset", $"not an offset for {place.Name}", typed, Range));
        return 0;
    }

    /// <summary>Decibels, with or without the unit.</summary>
    internal static bool TryDecibels(string typed, out double db)
    {
        string number = typed.EndsWith("dB", StringComparison.OrdinalIgnoreCase) ? typed[..^2] : typed;
        return CountParser.TryNumber(number.Replace(" ", "", StringComparison.Ordinal), out db);
    }

    [GeneratedRegex(@"\s[+\-−]\s*[0-9.,]+\s*dB\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Offset();
}
