using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Workshop.Steps;

/// <summary>One piece on the board.</summary>
/// <param name="Snapshot">The piece.</param>
/// <param name="Status">Where it stands among its steps.</param>
/// <param name="PackFromUtc">When its ink is fully hard; null when it is, or none was named.</param>
/// <param name="Ahead">How its standing turns by time alone.</param>
public sealed record BoardLine(PieceSnapshot Snapshot, StepStatus Status, DateTimeOffset? PackFromUtc, IReadOnlyList<StepTurn> Ahead);

/// <summary>What is curing, what may move, what is late.</summary>
/// <param name="NowUtc">The shop's now.</param>
/// <param name="Zone">The shop's time zone.</param>
/// <param name="ClockDoubt">What is odd about the clock; null when nothing is.</param>
/// <param name="Lines">Pieces in the shop, the most pressing first.</param>
/// <param name="Baskets">Baskets in a bath.</param>
/// <param name="Mixes">Mixes whose pot life runs, or ran out not long ago, newest first.</param>
public sealed record ClockBoard(
    DateTimeOffset NowUtc,
    TimeZoneInfo Zone,
    string? ClockDoubt,
    IReadOnlyList<BoardLine> Lines,
    IReadOnlyList<BasketStatus> Baskets,
    IReadOnlyList<InkMixRecord> Mixes
)
{
    /// <summary>How long a mix stays on the board after it is to be discarded.</summary>
    private static readonly TimeSpan s_discarded = TimeSpan.FromDays(1);

    /// <summary>Pieces in the shop that cannot be shown, with the reasons.</summary>
    public IReadOnlyList<UnreadableRecord> Unreadable { get; init; } = [];

    /// <summary>Cautions of the baths that pieces go to next; of every bath on the board's way, or of any, where none goes next.</summary>
    public IReadOnlyList<string> BathCautions
    {
        get
        {
            StepPlan[] baths = [.. Lines.SelectMany(line => line.Snapshot.Plans.Where(plan => plan.Name == PottingService.Step))];
            StepPlan[] next =
            [
                .. Lines
                    .Where(line => line.Status.Step == PottingService.Step)
                    .SelectMany(line => line.Snapshot.Plans.Where(plan => plan.Name == PottingService.Step)),
            ];
            string[] told = [.. (next.Length > 0 ? next : baths).SelectMany(plan => plan.Cautions).Distinct()];
            return told.Length > 0 ? told : Cautions.ForBath(null);
        }
    }

    /// <summary>The board as it stands.</summary>
    public static async Task<ClockBoard> ReadAsync(
        IStepRecords records,
        PieceService shelf,
        PottingService potting,
        CancellationToken cancel
    )
    {
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        IReadOnlyList<InkMixRecord> mixes = await records.InkMixesAsync(200, cancel).ConfigureAwait(false);
        IReadOnlyList<RecordStatus<PieceSnapshot>> open = await shelf.OpenStatusesAsync(cancel).ConfigureAwait(false);
        IEnumerable<BoardLine> lines = open.Readable()
            .Select(life => new BoardLine(
                life,
                life.Status(nowUtc, rules.Zone),
                PackFrom(life, mixes, nowUtc),
                life.Ahead(nowUtc, rules.Zone)
            ));
        return new ClockBoard(
            nowUtc,
            rules.Zone,
            await shelf.ClockDoubtAsync(cancel).ConfigureAwait(false),
            [
                .. lines
                    .OrderBy(line => Urgency(line.Status))
                    .ThenBy(line => line.Status.ChangesUtc ?? DateTimeOffset.MaxValue)
                    .ThenBy(line => line.Snapshot.Piece.Serial, StringComparer.OrdinalIgnoreCase),
            ],
            await potting.GoingAsync(cancel).ConfigureAwait(false),
            [.. mixes.Where(mix => mix.ToMix().DiscardUtc + s_discarded > nowUtc)]
        )
        {
            Unreadable = open.Unreadable(),
        };
    }

    private static DateTimeOffset? PackFrom(PieceSnapshot life, IReadOnlyList<InkMixRecord> mixes, DateTimeOffset nowUtc) =>
        life.History.Marked is { } marked
        && mixes.FirstOrDefault(mix => mix.Id == marked.MixId) is { } ink
        && ink.ToMix().Cure(marked.TimeUtc).EndUtc is var end
        && end > nowUtc
            ? end
            : null;

    private static int Urgency(StepStatus standing) =>
        standing.NeedsPerson
            ? 0
            : standing.State switch
            {
                StepState.Late => 1,
                StepState.MayEnd => 2,
                StepState.MayMove => 3,
                StepState.Running => 4,
                StepState.Held => 5,
                _ => 6,
            };
}
