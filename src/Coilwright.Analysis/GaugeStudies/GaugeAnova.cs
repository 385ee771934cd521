using MathNet.Numerics.Distributions;

namespace Coilwright.Analysis.GaugeStudies;

/// <summary>One line of an analysis of variance.</summary>
/// <param name="Squares">Sum of squares.</param>
/// <param name="Freedom">Degrees of freedom.</param>
public readonly record struct AnovaLine(double Squares, int Freedom)
{
    /// <summary>Mean square; 0 without freedom.</summary>
    public double Mean => Freedom > 0 ? Squares / Freedom : 0;

    /// <summary>This line and another pooled: squares and freedom added.</summary>
    /// <param name="other">The other.</param>
    public AnovaLine And(AnovaLine other) => new(Squares + other.Squares, Freedom + other.Freedom);

    /// <summary>F of this line over another; null when the other has no variation.</summary>
    public double? Over(AnovaLine other) => other.Mean > 0 ? Mean / other.Mean : null;

    /// <summary>Probability of such an F or a greater one by chance; null as above.</summary>
    public double? Chance(AnovaLine other) => Over(other) is { } f ? 1 - FisherSnedecor.CDF(Freedom, other.Freedom, f) : null;
}

/// <summary>Gauge study by analysis of variance: parts and persons crossed, both random.</summary>
/// <param name="Part">Between parts.</param>
/// <param name="Person">Between persons.</param>
/// <param name="Interaction">Persons who read some parts differently.</param>
/// <param name="Error">Repeated readings.</param>
/// <param name="IsPooled">True when the interaction is no more than chance and has been put into the repeatability.</param>
/// <param name="Variation">Standard deviations.</param>
/// <remarks>
/// Two-way random model with replication (any textbook; from memory). Checked against the certified sums of squares and the widely printed
/// study of 10 parts, 3 persons, 3 trials.
/// </remarks>
public sealed record GaugeAnova(
    AnovaLine Part,
    AnovaLine Person,
    AnovaLine Interaction,
    AnovaLine Error,
    bool IsPooled,
    GaugeVariation Variation
)
{
    /// <summary>The interaction is pooled when chance gives one as great more often than this.</summary>
    public const double PooledAbove = 0.05;

    /// <summary>Computes the study.</summary>
    /// <param name="readings">The readings.</param>
    public static GaugeAnova Compute(CrossedReadings readings)
    {
        int parts = readings.Parts,
            persons = readings.Persons,
            trials = readings.Trials;
        double mean = readings.All.Average(),
            cells = 0,
            within = 0;
        for (int part = 0; part < parts; part++)
        {
            for (int person = 0; person < persons; person++)
            {
                double cell = readings.Cell(part, person).Average(),
                    off = cell - readings.PartMean(part) - readings.PersonMean(person) + mean;
                cells += trials * off * off;
                within += readings.Cell(part, person).Sum(value => (value - cell) * (value - cell));
            }
        }

        AnovaLine byPart = new(
            persons * trials * Enumerable.Range(0, parts).Sum(part => Square(readings.PartMean(part) - mean)),
            parts - 1
        );
        AnovaLine byPerson = new(
            parts * trials * Enumerable.Range(0, persons).Sum(person => Square(readings.PersonMean(person) - mean)),
            persons - 1
        );
        AnovaLine interaction = new(cells, (parts - 1) * (persons - 1)),
            error = new(within, parts * persons * (trials - 1));
        bool pooled = interaction.Chance(error) is not { } chance || chance > PooledAbove;
        return new GaugeAnova(
            byPart,
            byPerson,
            interaction,
            error,
            pooled,
            Components(byPart, byPerson, interaction, error, pooled, (parts, persons, trials))
        );
    }

    private static GaugeVariation Components(
        AnovaLine part,
        AnovaLine person,
        AnovaLine interaction,
        AnovaLine error,
        bool pooled,
        (int Parts, int Persons, int Trials) size
    )
    {
        AnovaLine repeat = pooled ? error.And(interaction) : error,
            against = pooled ? repeat : interaction;
        double together = pooled ? 0 : Math.Max(0, (interaction.Mean - error.Mean) / size.Trials);
        double persons = Math.Max(0, (person.Mean - against.Mean) / (size.Parts * size.Trials)),
            parts = Math.Max(0, (part.Mean - against.Mean) / (size.Persons * size.Trials));
        return new GaugeVariation(Math.Sqrt(repeat.Mean), Math.Sqrt(persons + together), Math.Sqrt(parts));
    }

    private static double Square(double x) => x * x;
}
