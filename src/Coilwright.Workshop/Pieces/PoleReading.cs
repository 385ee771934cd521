using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Pieces;

/// <summary>Flux density read over every pole at one jig distance.</summary>
/// <param name="PolesT">Readings in order of the poles, T; positive for a north pole.</param>
/// <param name="JigDistanceM">Distance of the probe from the pole, m; readings at different distances cannot be compared.</param>
/// <param name="Instrument">Whose reading it is, or empty.</param>
public sealed record PoleReading(IReadOnlyList<double> PolesT, double JigDistanceM, string Instrument = "")
{
    /// <summary>Largest spread that passes when the shop states none, a part of the mean; our assumption.</summary>
    public const double UsualSpread = 0.10;

    /// <summary>What a final test calls it.</summary>
    private const string Outcome = "gauss";

    /// <summary>What was read over the poles among readings of one test; null when nothing was.</summary>
    public static PoleReading? Of(IReadOnlyList<PieceReadingRecord> readings)
    {
        PieceReadingRecord[] poles = [.. readings.Where(reading => reading is { Pole: not null, Si: not null })];
        return poles.Length == 0
            ? null
            : new PoleReading([.. poles.Select(pole => pole.Si!.Value)], poles[0].DistanceM ?? 0, poles[0].Instrument);
    }

    private int Majority => Math.Sign(PolesT.Sum(Math.Sign));

    /// <summary>Largest minus smallest strength over the mean strength.</summary>
    public double Spread => PolesT.Count == 0 ? 0 : (PolesT.Max(Math.Abs) - PolesT.Min(Math.Abs)) / PolesT.Average(Math.Abs);

    /// <summary>Numbers of the poles, from 1, that stand against most or against what the recipe says.</summary>
    /// <param name="northUp">+1 north up, −1 south up by the recipe; 0 takes the side of most poles.</param>
    public IReadOnlyList<int> Reversed(int northUp = 0)
    {
        int right = northUp != 0 ? northUp : Majority;
        return [.. Enumerable.Range(0, PolesT.Count).Where(pole => Math.Sign(PolesT[pole]) != right).Select(pole => pole + 1)];
    }

    /// <summary>Whether the piece goes on: a reversed pole stops it, a spread beyond the limit holds it.</summary>
    /// <param name="northUp">+1 north up, −1 south up by the recipe; 0 when it does not say.</param>
    /// <param name="largestSpread">The shop's limit, a part of the mean.</param>
    public TestOutcome Judge(int northUp = 0, double largestSpread = UsualSpread)
    {
        string spread = string.Create(
            CultureInfo.InvariantCulture,
            $"spread {100 * Spread:0} % at {QuantityParser.Format(JigDistanceM, QuantityKind.Length)}"
        );
        IReadOnlyList<int> reversed = Reversed(northUp);
        if (reversed.Count > 0)
        {
            return new TestOutcome(Outcome, TestResult.Stop, $"stop: pole {string.Join(", ", reversed)} reversed");
        }

        return Spread > largestSpread
            ? new TestOutcome(Outcome, TestResult.Fail, $"fail: {spread}, more than {100 * largestSpread:0} %")
            : new TestOutcome(Outcome, TestResult.Pass, spread);
    }
}
