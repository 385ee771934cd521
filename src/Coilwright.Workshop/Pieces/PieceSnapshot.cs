using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>A piece with all that is known of it.</summary>
/// <param name="Piece">As it was put together.</param>
/// <param name="Revision">The released revision it was made to.</param>
/// <param name="Recipe">That revision, read.</param>
/// <param name="Parts">All parts, those taken out too.</param>
/// <param name="History">What happened.</param>
/// <param name="Readings">All readings of the whole piece.</param>
public sealed record PieceSnapshot(
    PieceRecord Piece,
    RevisionRecord Revision,
    Recipe Recipe,
    IReadOnlyList<PiecePartRecord> Parts,
    PieceEventLog History,
    IReadOnlyList<PieceReadingRecord> Readings
)
{
    /// <summary>Parts that are in it now.</summary>
    public IReadOnlyList<PiecePartRecord> PartsIn => [.. Parts.Where(part => !IsOut(part))];

    /// <summary>The steps of its recipe.</summary>
    public IReadOnlyList<StepPlan> Plans => RecipeSteps.Of(Recipe);

    /// <summary>True when it is in the shop.</summary>
    public bool IsInShop => History.Shipment is null && !History.IsScrapped;

    /// <summary>True for a part that was taken out.</summary>
    public bool IsOut(PiecePartRecord part) => History.InForce.OfType<PartOut>().Any(one => one.PartId == part.Id);

    /// <summary>Where it stands among its steps. A final test that it did not pass holds it until it is tested again.</summary>
    public StepStatus Status(DateTimeOffset nowUtc, TimeZoneInfo zone)
    {
        StepStatus standing = StepRules.Stand(Plans, History.Runs, History.Holds, nowUtc, zone);
        return standing is { State: StepState.MayMove, Step: PieceEventLog.FinalTest } && FailedTest is { } test
            ? standing with
            {
                State = StepState.Held,
                Words = $"final test {ShopTime.Words(test.TimeUtc, zone)}: {test.Verdict}; held until it is tested again",
            }
            : standing;
    }

    /// <summary>The final test that holds and was not passed; null when there is none.</summary>
    public Tested? FailedTest => History.Test is { Passed: false } test ? test : null;

    /// <summary>How its standing turns by time alone from now on, in order; empty when it does not.</summary>
    public IReadOnlyList<StepTurn> Ahead(DateTimeOffset nowUtc, TimeZoneInfo zone)
    {
        List<StepTurn> turns = [];
        DateTimeOffset atUtc = nowUtc;
        while (Status(atUtc, zone).ChangesUtc is { } changesUtc && changesUtc >= atUtc)
        {
            atUtc = changesUtc.AddTicks(1); // the latest end is still in time at its own moment
            turns.Add(new StepTurn(changesUtc, Status(atUtc, zone)));
        }

        return turns;
    }

    /// <summary>Readings of one test or examination.</summary>
    public IReadOnlyList<PieceReadingRecord> ReadingsOf(PieceEvent happened) =>
        [.. Readings.Where(reading => reading.EventId == happened.Id)];

    /// <summary>All readings and the values that events themselves say, in order of entry.</summary>
    public IReadOnlyList<PieceReadingRecord> Values =>
        [.. History.All.SelectMany(happened => ReadingsOf(happened).Concat(happened.Values))];

    /// <summary>Where it is, in a few words: for lists and recalls.</summary>
    /// <param name="nowUtc">The shop's now.</param>
    /// <param name="zone">The shop's time zone.</param>
    /// <param name="customer">Words for a customer's id.</param>
    public string State(DateTimeOffset nowUtc, TimeZoneInfo zone, Func<Guid, string> customer) =>
        History switch
        {
            { IsScrapped: true } => "scrapped",
            { Shipment: { } shipment } => $"shipped {ShopTime.Words(shipment.TimeUtc, zone)} to {customer(shipment.CustomerId)}",
            { Return: { } back } => $"returned {ShopTime.Words(back.TimeUtc, zone)}: {Status(nowUtc, zone).Words}",
            _ => $"in the shop: {Status(nowUtc, zone).Words}",
        };

    /// <summary>What stands in the way of anything being done to it now; null when it is in the shop.</summary>
    public Problem? NotHere =>
        History switch
        {
            { IsScrapped: true } => new Problem("piece", $"{Piece.Serial} was scrapped", Piece.Serial),
            { Shipment: not null } => new Problem("piece", $"{Piece.Serial} has left the shop", Piece.Serial, "book its return first"),
            _ => null,
        };
}
