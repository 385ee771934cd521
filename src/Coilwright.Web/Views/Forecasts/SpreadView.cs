using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Spread;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views.Forecasts;

/// <summary>The spread of a run as its page tells it: the answer, what to mend first, and each quantity in few words.</summary>
/// <param name="Run">The run.</param>
public sealed record SpreadView(RunSpread Run)
{
    /// <summary>Quantities in sight, unless more have limits; the others are folded.</summary>
    private const int InSight = 4;

    private static readonly string[] s_drawn =
    [
        QuantityKey.DcResistance,
        QuantityKey.Inductance,
        QuantityKey.LoadedPeak,
        QuantityKey.Output,
        QuantityKey.Capacitance,
        QuantityKey.Hum,
    ];

    /// <summary>Pages where something is done about a cause.</summary>
    private static readonly Dictionary<string, (string Address, string Words)> s_actions = new()
    {
        ["measured-spool"] = ("/spools", "Measure a spool"),
        ["tighter-counter"] = ("/machines", "Test a winder's count"),
    };

    public SpreadLead Lead { get; } = SpreadLead.Of(Run);

    /// <summary>The answer in a few words.</summary>
    public string Answer =>
        Lead switch
        {
            { Within: { } within } => $"{Percent(within)} of pieces within limits",
            { Led: [{ } first, ..] } => $"95 of 100 pieces within {Half(first)}",
            _ => "No result scatters",
        };

    /// <summary>What the answer rests on.</summary>
    public string About =>
        Lead switch
        {
            { Within: not null } => string.Join("; ", Lead.Led.Select(Limits)),
            { Led: [{ } first, ..] } => $"of {FigureFormatter.Name(first.Name)} {Value(first.Mean, first)}; the recipe has no limits",
            _ => "",
        };

    /// <summary>What to mend first, and what it would bring.</summary>
    public string First =>
        Lead.Remedies is [{ } first, ..]
            ? $"Mend first: {Then(first)}"
            : "Nothing that we know of narrows it: no cause by itself makes more than a fiftieth of it.";

    /// <summary>The page where what comes first is done; null where there is none.</summary>
    public (string Address, string Words)? Action =>
        Lead.Remedies is [{ } first, ..] && s_actions.TryGetValue(first.Remedy.Remedy, out (string, string) action) ? action : null;

    /// <summary>Quantities drawn, those with limits first.</summary>
    public IReadOnlyList<QuantitySpread> Drawn =>
        [
            .. Lead
                .Led.Concat(s_drawn.Select(name => Run.Quantities.FirstOrDefault(one => one.Name == name)).OfType<QuantitySpread>())
                .Where(one => one.StandardDeviation > 0)
                .DistinctBy(one => one.Name),
        ];

    /// <summary>How many of them are in sight.</summary>
    public int Shown => Math.Max(InSight, Lead.Led.Count);

    /// <summary>A remedy as a row: what is done.</summary>
    public static string Words(LedRemedy remedy) => remedy.Remedy.Words;

    /// <summary>The pieces within limits then; empty without limits.</summary>
    public static string WithinThen(LedRemedy remedy) => remedy.Within is { } within ? Percent(within) : "–";

    /// <summary>What it narrows: "DC resistance at 20 °C: 190 Ω → 63 Ω".</summary>
    public static string Narrowed(LedRemedy remedy) =>
        remedy.Most is { } most
            ? $"{FigureFormatter.Name(most.Name)}: {Value(most.StandardDeviation, most)} → "
                + Value(remedy.Remedy.StandardDeviation[most.Name], most)
            : "";

    /// <summary>A quantity under its figure.</summary>
    public static string Caption(QuantitySpread one)
    {
        string outside = one.OutsideTarget is { } part ? $"; {Percent(part)} outside the limits" : "";
        string mostly = one.Causes is [{ Total: > 0 } first, ..]
            ? $"; {Percent(first.Total)} of it from {ScatterFormatter.Of(first.Cause)}"
            : "";
        return $"{Value(one.Mean, one)}, 95 % from {Value(one.Low, one)} to {Value(one.High, one)}{outside}{mostly}";
    }

    public static string Value(double value, QuantitySpread one) => FigureFormatter.Value(value, one.Unit);

    public static string Percent(double part) => string.Create(CultureInfo.InvariantCulture, $"{part * 100:0.#} %");

    private static string Then(LedRemedy remedy)
    {
        string within = remedy.Within is { } then ? $"{Percent(then)} would be within limits, and " : "";
        return $"{remedy.Remedy.Words}. Then {within}the standard deviation narrows, {Narrowed(remedy)}.";
    }

    private static string Limits(QuantitySpread one) =>
        $"{FigureFormatter.Name(one.Name)} {Value(one.Target!.Low, one)} to {Value(one.Target.High, one)}";

    private static string Half(QuantitySpread one) =>
        string.Create(CultureInfo.InvariantCulture, $"±{100 * (one.High - one.Low) / 2 / Math.Abs(one.Mean):0.#} %");
}
