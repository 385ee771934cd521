using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts;

/// <summary>A result by its name in the file formats, read from the vector of all results.</summary>
/// <param name="Name">For example "dcResistance" or "loadedPeak".</param>
/// <param name="Unit">SI unit as printed.</param>
/// <param name="Read">Takes it from the vector; NaN where it does not exist, for example without a peak.</param>
internal sealed record NamedQuantity(string Name, string Unit, Func<double[], double> Read)
{
    /// <summary>Unit of the output: volts per metre a second of vertical velocity.</summary>
    public const string OutputUnit = "V·s/m";

    /// <summary>Shape of its scatter.</summary>
    public Scatter Scatter =>
        Name switch
        {
            QuantityKey.Capacitance or QuantityKey.UnloadedPeakGain or QuantityKey.LoadedPeakGain => Scatter.Skewed,
            QuantityKey.UnloadedPeak or QuantityKey.LoadedPeak => Scatter.SkewedLog,
            QuantityKey.Coupling or QuantityKey.ResistanceMismatch or QuantityKey.InductanceMismatch => Scatter.Normal,
            _ => Signed is not null || Unit is "dB" or "dBV" ? Scatter.Normal : Scatter.LogNormal,
        };

    /// <summary>
    /// The quantity with its sign, where it is told without: near a perfect balance the sign turns, and a magnitude would hide the scatter.
    /// </summary>
    public Func<double[], double>? Signed { get; private init; }

    /// <summary>Reads the quantity so that it scatters smoothly about these results.</summary>
    public Func<double[], double> Around(double[] middle)
    {
        if (Signed is not { } signed)
        {
            return Read;
        }

        double sign = signed(middle) < 0 ? -1 : 1;
        return y => sign * signed(y);
    }

    /// <summary>A propagated estimate as it is told: a magnitude does not fall below zero.</summary>
    public Estimate Told(Estimate estimate) =>
        Signed is null || estimate.Low >= 0 ? estimate : estimate with { Low = 0, High = Math.Max(estimate.High, -estimate.Low) };

    /// <summary>The output of a pickup: mean of its strings' sensitivities, signs left out.</summary>
    public static double OutputOf(IEnumerable<double> sensitivities) => sensitivities.Average(Math.Abs);

    /// <summary>Everything that a run or a search speaks of.</summary>
    public static IReadOnlyList<NamedQuantity> CreateAll(ForecastScene scene, ForecastVector vector, bool loaded)
    {
        int coils = scene.Model.Coils.Count;
        List<NamedQuantity> list =
        [
            Pickup(QuantityKey.DcResistance, PickupResult.DcResistance),
            Pickup(QuantityKey.Inductance, PickupResult.Inductance),
            Pickup(QuantityKey.Capacitance, PickupResult.Capacitance),
            Peak(QuantityKey.UnloadedPeak, PickupResult.UnloadedFrequency, 0),
            Peak(QuantityKey.UnloadedPeakGain, PickupResult.UnloadedFrequency, 1),
        ];
        if (loaded)
        {
            list.AddRange([
                Peak(QuantityKey.LoadedPeak, PickupResult.LoadedFrequency, 0),
                Peak(QuantityKey.LoadedPeakGain, PickupResult.LoadedFrequency, 1),
            ]);
        }

        if (scene.Strings is { } strings)
        {
            list.Add(
                new(QuantityKey.Output, OutputUnit, y =>
                    OutputOf(Enumerable.Range(0, strings.Answers.Count).Select(i => y[vector.PlaceOf(i, StringResult.Sensitivity)]))
                )
            );
        }

        list.Add(
            new(QuantityKey.Hum, "m²", y => Math.Abs(y[vector.PlaceOf(PickupResult.EffectiveArea)]))
            {
                Signed = y => y[vector.PlaceOf(PickupResult.EffectiveArea)],
            }
        );
        if (scene.Wound.All(wound => wound.Fill is not null))
        {
            list.Add(Coils(QuantityKey.Fill, "1", CoilResult.Fill, Enumerable.Max));
        }

        list.AddRange([
            Coils(QuantityKey.Build, "m", CoilResult.Build, Enumerable.Max),
            Coils(QuantityKey.WireLength, "m", CoilResult.WireLength, Enumerable.Sum),
            Coils(QuantityKey.WireMass, "kg", CoilResult.WireMass, Enumerable.Sum),
        ]);
        if (coils == 1)
        {
            list.AddRange([
                Coils(QuantityKey.MeanTurnLength, "m", CoilResult.MeanTurnLength, Enumerable.Max),
                Coils(QuantityKey.AirInductance, "H", CoilResult.AirInductance, Enumerable.Max),
            ]);
            return list;
        }

        list.Add(Pickup(QuantityKey.Coupling, PickupResult.Coupling));
        for (int c = 0; c < coils; c++)
        {
            int coil = c;
            string of = string.Create(CultureInfo.InvariantCulture, $"coils[{c}].");
            list.Add(new(of + QuantityKey.DcResistance, "Ω", y => y[vector.PlaceOf(coil, CoilResult.DcResistance)]));
            list.Add(new(of + QuantityKey.Inductance, "H", y => y[vector.PlaceOf(coil, CoilResult.Inductance)]));
        }

        list.AddRange([
            Mismatch(QuantityKey.ResistanceMismatch, CoilResult.DcResistance),
            Mismatch(QuantityKey.InductanceMismatch, CoilResult.Inductance),
        ]);
        return list;

        NamedQuantity Pickup(string name, PickupResult result) => new(name, Formula.Pickup[result].Unit, y => y[vector.PlaceOf(result)]);

        NamedQuantity Peak(string name, PickupResult first, int offset) =>
            new(name, offset == 0 ? "Hz" : "dB", y => y[vector.PlaceOf(first)] > 0 ? y[vector.PlaceOf(first) + offset] : double.NaN);

        NamedQuantity Coils(string name, string unit, CoilResult result, Func<IEnumerable<double>, double> join) =>
            new(name, unit, y => join(Enumerable.Range(0, coils).Select(c => y[vector.PlaceOf(c, result)])));

        // Of the first two coils: their difference over their mean.
        NamedQuantity Mismatch(string name, CoilResult result) => new(name, "1", y =>
            {
                double a = y[vector.PlaceOf(0, result)],
                    b = y[vector.PlaceOf(1, result)];
                return 2 * (a - b) / (a + b);
            });
    }
}
