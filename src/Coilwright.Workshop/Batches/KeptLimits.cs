using System.Text.Json;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>Limits as they are written beside their batch, and read again as they were.</summary>
internal static class KeptLimits
{
    /// <summary>Frequencies that differ by less are one, Hz.</summary>
    private const double SameHz = 1e-6;

    /// <summary>The values of limits as text.</summary>
    public static string Write(VerdictLimits limits) =>
        JsonSerializer.Serialize(
            new Values(
                limits.Resistance,
                limits.Inductance,
                limits.NominalTurns,
                limits.CoilsInSeries,
                limits.OhmOffset,
                limits.WireMeasured,
                limits.AirRatio,
                limits.MeterPart
            )
        );

    /// <summary>What a good coil reads at a frequency as text; "null" where it cannot be foretold.</summary>
    public static string Write(ExpectedReading? expected) => JsonSerializer.Serialize(expected);

    /// <summary>The limits of a batch from what was written; null when they were not.</summary>
    /// <param name="rows">All that is kept of the batch.</param>
    public static VerdictLimits? Read(IReadOnlyList<BatchLimitsRecord> rows)
    {
        if (rows.FirstOrDefault(row => row.AtHz.Equals(0)) is not { } first)
        {
            return null;
        }

        Values values = Parsed<Values>(first) ?? throw Unreadable(first, null);
        (double Hz, ExpectedReading? Expected)[] written =
        [
            .. rows.Where(row => row.AtHz > 0).Select(row => (row.AtHz, Parsed<ExpectedReading>(row))),
        ];
        return new VerdictLimits
        {
            Resistance = values.Resistance,
            Inductance = values.Inductance,
            NominalTurns = values.NominalTurns,
            CoilsInSeries = values.CoilsInSeries,
            OhmOffset = values.OhmOffset,
            WireMeasured = values.WireMeasured,
            AirRatio = values.AirRatio,
            MeterPart = values.MeterPart,
            Expected = hz => Array.Find(written, one => Same(one.Hz, hz)).Expected,
            Origin = new LimitsOrigin(first.RevisionNumber, first.Program, first.Calibration, first.AtBegin, first.TimeUtc),
        };
    }

    /// <summary>True when what a good coil reads at a frequency was written.</summary>
    public static bool Knows(IReadOnlyList<BatchLimitsRecord> rows, double hz) => rows.Any(row => row.AtHz > 0 && Same(row.AtHz, hz));

    private static bool Same(double one, double other) => Math.Abs(one - other) < SameHz;

    private static T? Parsed<T>(BatchLimitsRecord row)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(row.Json);
        }
        catch (JsonException damaged)
        {
            throw Unreadable(row, damaged);
        }
    }

    private static InvalidOperationException Unreadable(BatchLimitsRecord row, Exception? inner) =>
        new($"the limits kept with the batch cannot be read (record {row.Id})", inner);

    private sealed record Values(
        Band Resistance,
        Band? Inductance,
        double NominalTurns,
        int CoilsInSeries,
        double OhmOffset,
        bool WireMeasured,
        double AirRatio,
        double MeterPart
    );
}
