namespace Coilwright.Web.Views;

/// <summary>A line across the strip of a run, with its name beside it.</summary>
/// <param name="Class">How it is drawn.</param>
/// <param name="Ohm">Where it stands, Ω at 20 °C.</param>
/// <param name="Name">What is written at its end.</param>
public sealed record StripLine(string Class, double Ohm, string Name)
{
    /// <summary>Height of a name, in the units of the drawing.</summary>
    private const double NameHeight = 17;

    /// <summary>Where its name stands.</summary>
    public double LabelAt { get; private init; }

    /// <summary>Lines from above with their names so far apart that none covers another.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="place">Height of a resistance in the drawing.</param>
    public static IReadOnlyList<StripLine> Apart(IEnumerable<StripLine> lines, Func<double, double> place)
    {
        List<StripLine> apart = [];
        foreach (StripLine line in lines.OrderBy(line => place(line.Ohm)))
        {
            double free = apart.Count == 0 ? double.MinValue : apart[^1].LabelAt + NameHeight;
            apart.Add(line with { LabelAt = Math.Max(free, place(line.Ohm)) });
        }

        return apart;
    }
}
