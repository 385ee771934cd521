using Coilwright.Analysis.Charts;

namespace Coilwright.Analysis.GaugeStudies;

/// <summary>Gauge study by average and range.</summary>
/// <param name="MeanRange">Mean range of repeated readings.</param>
/// <param name="PersonRange">Range of the persons' means.</param>
/// <param name="PartRange">Range of the parts' means.</param>
/// <param name="Variation">What follows from them.</param>
/// <remarks>
/// AIAG Measurement Systems Analysis, 4th edition (read in quotations) [MSA]: K₁ = 1/d₂(trials), K₂ and K₃ from one range of persons and of
/// parts, √(d₂² + d₃²).
/// </remarks>
public sealed record AverageAndRange(double MeanRange, double PersonRange, double PartRange, GaugeVariation Variation)
{
    /// <summary>Computes the study.</summary>
    /// <param name="readings">Readings of 2…50 persons with 2…50 trials; of more than 50 parts the factor for 50 is taken.</param>
    /// <exception cref="ArgumentOutOfRangeException">More than 50 persons or trials.</exception>
    public static AverageAndRange Compute(CrossedReadings readings)
    {
        double[] ranges =
        [
            .. from part in Enumerable.Range(0, readings.Parts)
            from person in Enumerable.Range(0, readings.Persons)
            select Range(readings.Cell(part, person)),
        ];
        double range = ranges.Average(),
            persons = Range([.. Enumerable.Range(0, readings.Persons).Select(readings.PersonMean)]),
            parts = Range([.. Enumerable.Range(0, readings.Parts).Select(readings.PartMean)]);
        double equipment = range / ChartConstants.ForSize(readings.Trials).D2,
            between = persons / ChartConstants.ForSize(readings.Persons).D2OfOneRange;
        double reproducibility = Math.Sqrt(Math.Max(0, between * between - equipment * equipment / (readings.Parts * readings.Trials)));
        return new AverageAndRange(
            range,
            persons,
            parts,
            new GaugeVariation(equipment, reproducibility, parts / ChartConstants.ForSize(Math.Min(50, readings.Parts)).D2OfOneRange)
        );
    }

    private static double Range(IReadOnlyList<double> values) => values.Max() - values.Min();
}
