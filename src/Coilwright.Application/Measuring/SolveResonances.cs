using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;

namespace Coilwright.Application.Measuring;

/// <summary>A person wants inductance and own capacitance from resonances with known capacitors.</summary>
public sealed partial class SolveResonances
{
    /// <summary>Uncertainty of the capacitors unless another is said, 95 %: as after measuring them.</summary>
    private const double UsualTolerance = 0.01;

    /// <summary>Frequency of the meter unless another is said, Hz.</summary>
    private const double UsualMeterHz = 1000;

    /// <summary>The answer, or every problem by its field: "peaks[1].capacitor", "tolerance".</summary>
    /// <param name="asked">What was typed.</param>
    /// <param name="unitRequired">True to refuse bare numbers.</param>
    public ReadOutcome<SolvedResonances> Solve(ResonanceQuestion asked, bool unitRequired)
    {
        QuantityReader typed = new(unitRequired);
        double relative = typed.Read("tolerance", asked.Tolerance, MeasureLimits.Tolerance) ?? UsualTolerance;
        double? ohm = typed.Read("resistance", asked.Resistance, MeasureLimits.Winding),
            henry = typed.Read("inductance", asked.Inductance, MeasureLimits.MeterInductance);
        double atHz = typed.Read("at", asked.At, MeasureLimits.MeterFrequency) ?? UsualMeterHz;
        ResonanceReading[] readings =
        [
            .. asked.Peaks.Select((peak, at) => ReadingOf(typed, peak, at, relative)).OfType<ResonanceReading>(),
        ];
        if (typed.Problems.Count == 0)
        {
            Check(typed, readings);
        }

        if (typed.Problems.Count > 0)
        {
            return new ReadOutcome<SolvedResonances>(null, typed.Problems);
        }

        AddedCapacitors solved = AddedCapacitors.Solve(readings, ohm);
        if (solved.Inductance.Value <= 0 || solved.Capacitance.Value <= 0)
        {
            return new ReadOutcome<SolvedResonances>(null, [NoPickup]);
        }

        return new ReadOutcome<SolvedResonances>(
            new SolvedResonances(Answer(solved, henry is { } read ? (read, atHz) : null), readings),
            []
        );
    }

    private static Problem NoPickup { get; } =
        new(
            "peaks",
            "no pickup has these resonances: they would need a capacitance of its own below nothing",
            null,
            "a lower resonance with a larger capacitor"
        );

    private static ResonanceAnswer Answer(AddedCapacitors solved, (double H, double Hz)? meter) =>
        new(solved, 1 / (2 * Math.PI * Math.Sqrt(solved.Inductance.Value * solved.Capacitance.Value)), meter);

    private static ResonanceReading? ReadingOf(QuantityReader typed, TypedPeak peak, int at, double relative)
    {
        string place = string.Create(CultureInfo.InvariantCulture, $"peaks[{at}]");
        double? added = typed.Read(place + ".capacitor", peak.Capacitor, MeasureLimits.Capacitor),
            hz = typed.Read(place + ".frequency", peak.Frequency, MeasureLimits.Peak);
        if (peak.Frequency.Trim().Length == 0)
        {
            typed.Add(new Problem(place + ".frequency", "where was the resonance found?", null, "10 Hz to 1 MHz"));
        }

        return hz is { } found
            ? new ResonanceReading(
                added ?? 0,
                (added ?? 0) * relative / Estimate.Sigmas95,
                found,
                LastDigit(peak.Frequency, found) / (2 * Math.Sqrt(3))
            )
            : null;
    }

    /// <summary>One unit of the last digit typed, Hz: the reading lies evenly within half of it either way.</summary>
    private static double LastDigit(string frequency, double hz)
    {
        Match match = Digits().Match(frequency);
        string digits = match.Groups[1].Value + "." + match.Groups[2].Value;
        bool read = double.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out double number);
        return match.Success && read && number > 0 ? hz / number * Math.Pow(10, -match.Groups[2].Length) : hz * 0.001;
    }

    private static void Check(QuantityReader typed, ResonanceReading[] readings)
    {
        if (readings.Select(reading => reading.AddedF).Distinct().Count() < 2)
        {
            typed.Add(
                new Problem(
                    "peaks",
                    "two resonances with different capacitors are needed, one of which may be the bare pickup's",
                    null,
                    "for example 9.19 kHz bare and 4.14 kHz with 470 pF"
                )
            );
            return;
        }

        ResonanceReading[] sorted = [.. readings.OrderBy(reading => reading.AddedF)];
        foreach (int i in Enumerable.Range(1, sorted.Length - 1).Where(i => Rises(sorted[i - 1], sorted[i])))
        {
            string words =
                $"{QuantityParser.Format(sorted[i].ResonanceHz, QuantityKind.Frequency)} with "
                + QuantityParser.Format(sorted[i].AddedF, QuantityKind.Capacitance);
            typed.Add(new Problem("peaks", "a larger capacitor must lower the resonance", words));
        }
    }

    private static bool Rises(ResonanceReading smaller, ResonanceReading larger) =>
        larger.AddedF > smaller.AddedF && larger.ResonanceHz >= smaller.ResonanceHz;

    [GeneratedRegex(@"^\s*(\d+)(?:[.,kM](\d+))?", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();
}
