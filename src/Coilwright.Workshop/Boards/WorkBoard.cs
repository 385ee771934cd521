using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Boards;

/// <summary>What goes on among the finishing steps: a column for each station, a card for each thing that is handled as one.</summary>
public static class WorkBoard
{
    /// <summary>Word of the step in which prints are made.</summary>
    public const string Marking = "marking";

    /// <summary>The columns in the order of the work; none for a station where nothing stands.</summary>
    public static IReadOnlyList<WorkStation> Of(ClockBoard clocks)
    {
        ILookup<string, WorkCard> byStation = Cards(clocks).ToLookup(card => card.Station);
        return
        [
            .. byStation
                .OrderByDescending(station => PlaceFromEnd(clocks, station.Key))
                .ThenBy(station => station.Key, StringComparer.Ordinal)
                .Select(station => new WorkStation(station.Key, [.. station])),
        ];
    }

    /// <summary>Every card, the most pressing first.</summary>
    public static IReadOnlyList<WorkCard> Cards(ClockBoard clocks)
    {
        HashSet<Guid> inBaskets = [.. clocks.Baskets.SelectMany(basket => basket.Pieces).Select(piece => piece.Piece.Id)];
        IEnumerable<WorkCard> cards = clocks
            .Baskets.Select(basket => OfBasket(basket, clocks))
            .Concat(
                clocks
                    .Lines.Where(line => !inBaskets.Contains(line.Snapshot.Piece.Id))
                    .GroupBy(line => (line.Snapshot.Recipe.Name, line.Status.State, line.Status.Step, Minute(line), line.Status.Words))
                    .Select(alike => OfPieces([.. alike], clocks.NowUtc))
            )
            .Concat(clocks.Mixes.Select(mix => OfMix(mix.ToMix(), clocks)));
        return
        [
            .. cards
                .OrderBy(Urgency)
                .ThenBy(card => card.Status.ChangesUtc ?? DateTimeOffset.MaxValue)
                .ThenBy(card => card.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>Serials in a line: neighbours as a row, several apart by commas.</summary>
    public static string Names(IReadOnlyList<PieceSnapshot> pieces)
    {
        string[] serials = [.. pieces.Select(piece => piece.Piece.Serial).OrderBy(serial => serial, StringComparer.OrdinalIgnoreCase)];
        return serials.Length <= 2 ? string.Join(", ", serials) : $"{serials[0]} to {serials[^1]} ({serials.Length})";
    }

    private static WorkCard OfBasket(BasketStatus basket, ClockBoard clocks)
    {
        // the piece that must stay longest decides for all of them
        BoardLine longest = clocks
            .Lines.Where(line => basket.Pieces.Any(piece => piece.Piece.Id == line.Snapshot.Piece.Id))
            .MaxBy(line => line.Snapshot.Plans.FirstOrDefault(plan => plan.Name == PottingService.Step)?.Least ?? TimeSpan.Zero)!;
        string pieces = basket.Pieces.Count == 1 ? "1 piece" : $"{basket.Pieces.Count} pieces";
        return new WorkCard
        {
            Station = PottingService.Step,
            Name = "Basket " + basket.Record.Label,
            About = $"{pieces}, {basket.Record.Kind} lot {basket.Record.Lot}",
            Status = longest.Status,
            Ahead = longest.Ahead,
            Alarm = basket.AlarmAt(clocks.NowUtc),
            Pieces = basket.Pieces,
            Basket = basket,
        };
    }

    private static WorkCard OfPieces(BoardLine[] alike, DateTimeOffset nowUtc)
    {
        BoardLine first = alike[0];
        PieceSnapshot[] pieces = [.. alike.Select(line => line.Snapshot)];
        DateTimeOffset? packFromUtc = alike.Max(line => line.PackFromUtc);
        bool inkHardens = first.Status is { State: StepState.MayMove, Step: PieceEventLog.Packing } && packFromUtc > nowUtc;
        StepStatus hardening = new(StepState.Held, PieceEventLog.Packing, packFromUtc, "the ink hardens through before it is packed");
        return new WorkCard
        {
            Station = first.Status.Step,
            Name = Names(pieces),
            About = first.Snapshot.Recipe.Name + (first.Snapshot.History.Return is null ? "" : ", back from a customer"),
            Status = inkHardens ? hardening : first.Status,
            Ahead = inkHardens ? [new StepTurn(packFromUtc!.Value, first.Status)] : first.Ahead,
            Pieces = pieces,
        };
    }

    private static WorkCard OfMix(InkMix mix, ClockBoard clocks)
    {
        StepStatus good = new(StepState.Running, Marking, mix.DiscardUtc, $"throw away at {ShopTime.Words(mix.DiscardUtc, clocks.Zone)}"),
            gone = new(StepState.Late, Marking, null, $"was to be thrown away at {ShopTime.Words(mix.DiscardUtc, clocks.Zone)}");
        bool isGood = clocks.NowUtc < mix.DiscardUtc;
        return new WorkCard
        {
            Station = Marking,
            Name = "Ink mix " + mix.Label,
            About = $"lots {mix.Lots}, {QuantityParser.Format(mix.RoomC, QuantityKind.Temperature)}",
            Status = isGood ? good : gone,
            Ahead = isGood ? [new StepTurn(mix.DiscardUtc, gone)] : [],
            Mix = mix,
        };
    }

    private static long? Minute(BoardLine line) => line.Status.ChangesUtc?.Ticks / TimeSpan.TicksPerMinute;

    private static int PlaceFromEnd(ClockBoard clocks, string step) =>
        clocks
            .Lines.Select(line => line.Snapshot.Plans)
            .Select(plans => plans.Count - plans.TakeWhile(plan => plan.Name != step).Count())
            .Append(step == Marking ? 3 : 0)
            .Max();

    private static int Urgency(WorkCard card) =>
        card switch
        {
            { Alarm: not null } => 0,
            { NeedsPerson: true } => 1,
            { Status.State: StepState.Late } => 2,
            { Status.State: StepState.MayEnd } => 3,
            { Status.State: StepState.MayMove } => 4,
            _ => 5,
        };
}
