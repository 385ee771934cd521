namespace Coilwright.Analysis.GaugeStudies;

/// <summary>Readings of every part by every person, the same number of times.</summary>
public sealed class CrossedReadings
{
    private readonly double[][][] _cells;

    private CrossedReadings(double[][][] cells) => _cells = cells;

    /// <summary>Number of parts, 2 or more.</summary>
    public int Parts => _cells.Length;

    /// <summary>Number of persons, 2 or more.</summary>
    public int Persons => _cells[0].Length;

    /// <summary>Readings of each part by each person, 2 or more.</summary>
    public int Trials => _cells[0][0].Length;

    /// <summary>All readings: part by part, in it person by person.</summary>
    public IEnumerable<double> All => _cells.SelectMany(part => part).SelectMany(cell => cell);

    /// <summary>
    /// Arranges readings; null when parts, persons or trials are fewer than two, or a part was not read by each person equally often.
    /// </summary>
    public static CrossedReadings? TryArrange(IEnumerable<GaugeReading> readings)
    {
        GaugeReading[] all = [.. readings];
        string[] persons = [.. all.Select(reading => reading.Person).Distinct()];
        double[][][] cells =
        [
            .. all.GroupBy(reading => reading.Part)
                .Select(part =>
                    persons
                        .Select(person => part.Where(reading => reading.Person == person).Select(reading => reading.Value).ToArray())
                        .ToArray()
                ),
        ];
        int trials = cells.Length > 0 && persons.Length > 0 ? cells[0][0].Length : 0;
        return cells.Length < 2 || persons.Length < 2 || trials < 2 || cells.Any(part => part.Any(cell => cell.Length != trials))
            ? null
            : new CrossedReadings(cells);
    }

    /// <summary>Readings of one part by one person.</summary>
    public IReadOnlyList<double> Cell(int part, int person) => _cells[part][person];

    /// <summary>Mean of one part over all persons.</summary>
    /// <param name="part">Its number, from 0.</param>
    public double PartMean(int part) => _cells[part].SelectMany(cell => cell).Average();

    /// <summary>Mean of one person over all parts.</summary>
    /// <param name="person">The number, from 0.</param>
    public double PersonMean(int person) => _cells.SelectMany(part => part[person]).Average();
}
