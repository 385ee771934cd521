using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Spread;

/// <summary>What a run's spread comes to: how many pieces are within limits, and what would narrow it most.</summary>
/// <param name="Within">Part of the pieces within every limit of the recipe; null without limits.</param>
/// <param name="Led">The quantities that it is about: those with limits, or the resistance where there are none.</param>
/// <param name="Remedies">What narrows it, the best first; what widens it or changes nothing is left out.</param>
public sealed record SpreadLead(double? Within, IReadOnlyList<QuantitySpread> Led, IReadOnlyList<LedRemedy> Remedies)
{
    /// <summary>A remedy that leaves more than this part of every standard deviation narrows nothing.</summary>
    private const double Least = 0.98;

    /// <summary>What a run comes to.</summary>
    public static SpreadLead Of(RunSpread run)
    {
        QuantitySpread[] scattering = [.. run.Quantities.Where(one => one.StandardDeviation > 0)];
        QuantitySpread[] limited = [.. scattering.Where(one => one.Target is not null)];
        QuantitySpread[] led = limited.Length > 0 ? limited : [.. scattering.Where(one => one.Name == QuantityKey.DcResistance)];
        LedRemedy[] remedies =
        [
            .. run
                .Remedies.Select(remedy => Weighed(remedy, led))
                .Where(remedy => remedy.Left < Least)
                .OrderByDescending(remedy => Rounded(remedy.Within))
                .ThenBy(remedy => remedy.Left),
        ];
        return new SpreadLead(1 - run.OutsideAny, led, remedies);
    }

    /// <summary>A remedy is drawn with fewer pieces than the run: half a per cent more or less is no difference.</summary>
    private static double Rounded(double? within) => Math.Round(200 * (within ?? 0));

    private static LedRemedy Weighed(SpreadRemedy remedy, QuantitySpread[] led)
    {
        (QuantitySpread Quantity, double Left)[] all =
        [
            .. led.Select(one =>
                (one, remedy.StandardDeviation.GetValueOrDefault(one.Name, one.StandardDeviation) / one.StandardDeviation)
            ),
        ];
        (QuantitySpread? most, double left) = all.Length == 0 ? (null, 1) : all.MinBy(one => one.Left);
        return new LedRemedy(remedy, 1 - remedy.OutsideAny, most, left);
    }
}

/// <summary>Something that narrows a run.</summary>
/// <param name="Remedy">What is done.</param>
/// <param name="Within">Part of the pieces within every limit then; null without limits.</param>
/// <param name="Most">The quantity that it narrows most.</param>
/// <param name="Left">What is left of its standard deviation, as a part of it.</param>
public sealed record LedRemedy(SpreadRemedy Remedy, double? Within, QuantitySpread? Most, double Left);
