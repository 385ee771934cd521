using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Winding;

namespace Coilwright.Analysis.Spread;

/// <summary>What scatters in a run beside what a forecast does not know, and what can be done about it.</summary>
public static class RunInputs
{
    /// <summary>A piece is read in a room known to ±1 °C, 95 %; our assumption.</summary>
    private const double RoomC = 1;

    private sealed record Change(string Key, string Words, string[] Causes, Func<UncertainInput, UncertainInput> To);

    private static readonly Change[] s_remedies =
    [
        new("tighter-counter", "turns counted to ±0.05 % (proof: 100 marked turns on each machine)", ["turns"], input =>
            Narrowed(input, 0.0005)
        ),
        new(
            "measured-spool",
            "resistance of 10 m of each spool read before winding: bare diameter known to ±0.25 %",
            ["bareDiameter", "resistancePerLength"],
            input => Narrowed(input, input.Cause == "bareDiameter" ? 0.0025 : 0.005)
        ),
        new("sorted-magnets", "magnets and cores sorted: a quarter of their scatter left", ["permeability", "polarisation"], input =>
            Shrunk(input, 0.25)
        ),
        new(
            "steady-tension",
            "tension held by a brake that is checked: half of the stretch's and lay's scatter left",
            ["tension", "packing"],
            input => Shrunk(input, 0.5)
        ),
        new("measured-bobbins", "bobbins and poles measured by caliper, each to ±0.05 mm", ["bobbinSizes", "poleSizes"], input =>
            Within(input, 0.05e-3)
        ),
        new("measured-capacitance", "one coil of the kind measured: capacitance known to ±5 %", ["capacitance"], input =>
            Narrowed(input, 0.05)
        ),
        new(
            "winding-by-time",
            "worse: wound by time instead of by count; the speed is known to ±10 % and the stop to ±1 s (our assumption)",
            ["turns"],
            ByTime
        ),
    ];

    /// <summary>The forecast's inputs as they scatter in a run.</summary>
    public static UncertainInput OfRun(UncertainInput input, bool byTime) =>
        input.Cause switch
        {
            "temperature" => input with
            {
                Estimate = new Estimate(input.Estimate.Value, input.Estimate.Value - RoomC, input.Estimate.Value + RoomC, Basis.Assumed),
                Source = "room read to ±1 °C, our assumption",
            },
            "turns" when byTime => ByTime(input),
            _ => input,
        };

    /// <summary>
    /// The inputs as a run draws them: one whose pieces share a part of it is drawn twice, once for the run and once for the piece; both
    /// move the same place.
    /// </summary>
    internal static IEnumerable<(UncertainInput Input, int Place)> Parted(IReadOnlyList<UncertainInput> inputs) =>
        inputs.Index().SelectMany(one => Parts(one.Item).Select(part => (part, one.Index)));

    private static UncertainInput[] Parts(UncertainInput input)
    {
        if (input.PieceShare is <= 0 or >= 1 || input.Estimate.IsExact)
        {
            return [input];
        }

        double common = Math.Sqrt(1 - input.PieceShare * input.PieceShare);
        return [Shrunk(input, common) with { IsCommon = true }, Shrunk(input, input.PieceShare) with { IsCommon = false }];
    }

    /// <summary>What could be done about the causes that are there.</summary>
    internal static IEnumerable<(string Key, string Words, Func<UncertainInput, UncertainInput> Change)> RemediesFor(
        IReadOnlyList<UncertainInput> inputs,
        bool byTime
    ) =>
        s_remedies
            .Where(remedy =>
                !(byTime && remedy.Key == "winding-by-time")
                && inputs.Any(input => remedy.Causes.Contains(input.Cause) && !input.Estimate.IsExact)
            )
            .Select(remedy =>
                (
                    remedy.Key,
                    remedy.Words,
                    (Func<UncertainInput, UncertainInput>)(input => remedy.Causes.Contains(input.Cause) ? remedy.To(input) : input)
                )
            );

    /// <summary>A run stopped by the clock: its turns follow from how well the speed and the stop are known, at the usual speed.</summary>
    private static UncertainInput ByTime(UncertainInput turns)
    {
        double aimed = turns.Estimate.Value;
        double spread = Math.Min(
            0.95,
            ClockStop.TurnsSpread(ClockStop.UsualSpeedSpread, ClockStop.UsualStopS, aimed, ClockStop.UsualSpeedRpm)
        );
        return turns with
        {
            Estimate = new Estimate(aimed, aimed * (1 - spread), aimed * (1 + spread), Basis.Assumed),
            Source = "wound by time: speed ±10 %, stop ±1 s, our assumption",
        };
    }

    /// <summary>Not wider than ± a fraction.</summary>
    private static UncertainInput Narrowed(UncertainInput input, double fraction)
    {
        Estimate estimate = input.Estimate;
        double half = Math.Abs(estimate.Value) * fraction;
        return estimate.High - estimate.Low <= 2 * half
            ? input
            : input with
            {
                Estimate = new Estimate(estimate.Value, estimate.Value - half, estimate.Value + half, Basis.Measured),
            };
    }

    /// <summary>Not wider than ± a length.</summary>
    private static UncertainInput Within(UncertainInput input, double halfM) =>
        input.Estimate.High - input.Estimate.Low <= 2 * halfM
            ? input
            : Shrunk(input, 2 * halfM / (input.Estimate.High - input.Estimate.Low));

    private static UncertainInput Shrunk(UncertainInput input, double factor)
    {
        Estimate estimate = input.Estimate;
        return input with
        {
            Estimate = estimate with
            {
                Low = estimate.Value - factor * (estimate.Value - estimate.Low),
                High = estimate.Value + factor * (estimate.High - estimate.Value),
            },
        };
    }
}
