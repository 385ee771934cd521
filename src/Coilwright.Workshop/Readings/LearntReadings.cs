using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Readings;

/// <summary>
/// What a good coil's Q is, learnt from a golden piece or from the coils of the batch in place of the forecast, whose eddy losses are its
/// weakest part.
/// </summary>
internal static class LearntReadings
{
    /// <summary>Fewer coils do not tell a batch from a fault. Our assumption.</summary>
    private const int Fewest = 5;

    /// <summary>Two frequencies nearer than this part of one are the same.</summary>
    private const double SameFrequency = 0.02;

    /// <summary>Losses only lower Q: above ωL/R by more than this, it is the meter. Our assumption.</summary>
    private const double Impossible = 1.1;

    /// <summary>Deviation of a golden piece's Q on the same meter, and of one coil's Q about its batch's.</summary>
    private const double GoldenDeviation = 0.02,
        CoilDeviation = 0.025;

    /// <summary>The limits with what the golden piece reads.</summary>
    public static VerdictLimits FromGolden(VerdictLimits limits, IReadOnlyList<ReadingRecord> golden) =>
        Learn(limits, [golden], fewest: 1, "the golden piece's", GoldenDeviation);

    /// <summary>
    /// The limits with what the coils of a batch read, where there are enough of them and they agree with what is possible.
    /// </summary>
    public static VerdictLimits FromBatch(VerdictLimits limits, IReadOnlyList<IReadOnlyList<ReadingRecord>> coils) =>
        Learn(limits, coils, Fewest, "the batch's middle", least: null);

    private static VerdictLimits Learn(
        VerdictLimits limits,
        IReadOnlyList<IReadOnlyList<ReadingRecord>> coils,
        int fewest,
        string from,
        double? least
    )
    {
        (double Hz, double Q)[] read =
        [
            .. coils
                .Select(coil => Last(coil, QuantityKey.Q))
                .OfType<ReadingRecord>()
                .Where(q => q.AtHz is > 0)
                .Select(q => (q.AtHz!.Value, q.Si!.Value)),
        ];
        List<(double Hz, ExpectedReading Expected)> learnt = [];
        foreach (IGrouping<double, (double Hz, double Q)> one in read.GroupBy(one => one.Hz).Where(one => one.Count() >= fewest))
        {
            double[] sorted = [.. one.Select(q => q.Q).Order()];
            if (
                limits.Expected(one.Key) is { } forecast
                && Expect(forecast, Middle(sorted), Winding(limits, coils, fewest), trusted: least is not null) is { } expected
            )
            {
                double deviation = least ?? Math.Sqrt(Math.PI / 2 / sorted.Length) * CoilDeviation; // of a median
                learnt.Add((one.Key, expected with { QualityDeviation = deviation, From = from }));
            }
        }

        Func<double, ExpectedReading?> before = limits.Expected;
        return learnt.Count == 0
            ? limits
            : limits with
            {
                Expected = hz => learnt.FirstOrDefault(one => Math.Abs(one.Hz - hz) <= SameFrequency * hz).Expected ?? before(hz),
            };
    }

    /// <summary>The expectation with a Q that was read; null where that Q cannot be a good coil's.</summary>
    private static ExpectedReading? Expect(ExpectedReading forecast, double quality, double winding, bool trusted)
    {
        double reactance = forecast.Reactance * winding;
        bool tooGood = quality > Impossible * reactance,
            tooBad = quality < forecast.Quality * Math.Exp(-3 * forecast.QualityDeviation); // a fault of all is no expectation
        double winds = quality * forecast.Reactance / forecast.AcOverDc / forecast.Quality; // without the capacitance
        return tooGood || (tooBad && !trusted)
            ? null
            : forecast with
            {
                Quality = quality,
                Reactance = reactance,
                AcOverDc = Math.Max(1, reactance / winds),
            };
    }

    /// <summary>Inductance over resistance as read, against those expected.</summary>
    private static double Winding(VerdictLimits limits, IReadOnlyList<IReadOnlyList<ReadingRecord>> coils, int fewest)
    {
        double[] henry =
        [
            .. coils
                .Select(coil => Last(coil, QuantityKey.Inductance))
                .OfType<ReadingRecord>()
                .Select(one =>
                    limits.Expected(one.AtHz ?? VerdictLimits.UsualHz) is { } expected ? one.Si!.Value / expected.InductanceH : 0
                )
                .Where(ratio => ratio > 0)
                .Order(),
        ];
        double[] ohm =
        [
            .. coils
                .Select(coil => Last(coil, QuantityKey.DcResistance))
                .OfType<ReadingRecord>()
                .Select(one => one.Comparable() / limits.Resistance.Nominal)
                .Order(),
        ];
        return (henry.Length >= fewest ? Middle(henry) : 1) / (ohm.Length >= fewest ? Middle(ohm) : 1);
    }

    private static ReadingRecord? Last(IReadOnlyList<ReadingRecord> readings, string quantity) =>
        readings.LastOrDefault(reading => reading.Quantity == quantity && reading is { Si: > 0, Flag: "" });

    private static double Middle(double[] sorted) => (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
}
