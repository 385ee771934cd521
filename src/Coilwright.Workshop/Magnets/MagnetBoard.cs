using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;

namespace Coilwright.Workshop.Magnets;

/// <summary>Magnets of the shop: what stops, what waits to be charged, what was read.</summary>
/// <param name="Lines">Pieces in the shop that have magnets, in order of making.</param>
/// <param name="Asked">The lot or serial that was asked for; empty for none.</param>
/// <param name="Found">Its pieces, those that left the shop too.</param>
/// <param name="Zone">The shop's time zone.</param>
public sealed record MagnetBoard(IReadOnlyList<MagnetLine> Lines, string Asked, IReadOnlyList<MagnetLine> Found, TimeZoneInfo Zone)
{
    /// <summary>Pieces that cannot be shown, with the reasons.</summary>
    public IReadOnlyList<UnreadableRecord> Unreadable { get; init; } = [];

    /// <summary>Pieces that do not go on as their poles were read, reversed ones first.</summary>
    public IReadOnlyList<MagnetLine> Stopped =>
        [
            .. Lines
                .Where(line => line.Judged is { Result: not TestResult.Pass })
                .OrderByDescending(line => line.Judged!.Result == TestResult.Stop),
        ];

    /// <summary>Pieces whose charge is said with a step that is not done.</summary>
    public IReadOnlyList<MagnetLine> InSteps => [.. Lines.Where(line => line.Waits && line.WaitingStep.Length > 0)];

    /// <summary>Pieces without such a step whose charge nobody said.</summary>
    public IReadOnlyList<MagnetLine> Unsaid => [.. Lines.Where(line => line.Waits && line.WaitingStep.Length == 0)];

    /// <summary>Lots in the shop's pieces.</summary>
    public IReadOnlyList<MagnetLot> Lots => MagnetLot.Among(Lines);

    /// <summary>Pieces that were charged, the latest first.</summary>
    public IReadOnlyList<MagnetLine> Charged =>
        [.. Lines.Where(line => line.Charge is not null).OrderByDescending(line => line.Charge!.TimeUtc)];
}
