using System.Text.Json;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Formats.Records;

/// <summary>Writes a piece with its whole life in the file format "coilwright.piece/1".</summary>
public static class PieceJson
{
    public static string Write(TracedPiece piece) =>
        JsonListWriter.Write(
            new
            {
                Format = "coilwright.piece/1",
                piece.Snapshot.Piece.Serial,
                Recipe = piece.Snapshot.Recipe.Name,
                Revision = piece.Snapshot.Revision.Letter,
                piece.State,
                piece.Snapshot.Piece.Person,
                Time = piece.Snapshot.Piece.TimeUtc,
                Overruled = piece.Snapshot.Piece.Overruled,
                Options = piece.Snapshot.Piece.Options.Split('\n', StringSplitOptions.RemoveEmptyEntries),
                Coils = piece.Coils.Select(coil => new
                {
                    coil.Place,
                    Batch = coil.Batch.Name,
                    coil.Tag,
                    TakenOut = coil.IsOut,
                    coil.Spool,
                    SpoolLot = coil.Lot,
                    coil.SpoolDoubt,
                    coil.Machine,
                    coil.Persons,
                    Readings = coil.Readings.Select(reading => new
                    {
                        reading.Quantity,
                        reading.Typed,
                        Value = reading.Si,
                        Temperature = reading.TemperatureC,
                        At = reading.AtHz,
                        Time = reading.TimeUtc,
                    }),
                }),
                Parts = piece.Snapshot.Parts.Where(part => part.Kind != PartKind.Coil).Select(part => new { part.Place, part.Lot }),
                Charge = MagnetCharge.Of(piece.Snapshot) is { } charge
                    ? new
                    {
                        charge.Words,
                        charge.Level.Share,
                        Field = charge.Level.FieldT,
                        Distance = charge.Level.JigM,
                        charge.Charger,
                        charge.Person,
                        Time = charge.TimeUtc,
                    }
                    : null,
                Set = piece.Set is { } set
                    ? new
                    {
                        set.Name,
                        set.Members.First(one => one.Snapshot.Piece.Id == piece.Snapshot.Piece.Id).Place.Place,
                        With = set
                            .Members.Where(one => one.Snapshot.Piece.Id != piece.Snapshot.Piece.Id)
                            .Select(one => one.Snapshot.Piece.Serial),
                    }
                    : null,
                Baskets = piece.Baskets.Select(basket => new
                {
                    basket.Label,
                    basket.Kind,
                    basket.Lot,
                    Limit = basket.LimitC,
                    Time = basket.TimeUtc,
                }),
                Inks = piece.Mixes.Select(mix => new
                {
                    mix.Label,
                    mix.Lots,
                    Time = mix.TimeUtc,
                    Discard = mix.ToMix().DiscardUtc,
                }),
                Customers = piece.Customers.Select(customer => customer.Reference),
                Events = piece.Snapshot.History.Lines.Select(one => new
                {
                    Kind = JsonNamingPolicy.CamelCase.ConvertName(one.Kind),
                    Words = one.Sentence(piece),
                    one.Person,
                    Time = one.TimeUtc,
                    Cost = one.CostSaid.Length > 0 ? one.CostSaid : null,
                    Answer = one.AnswerSaid.Length > 0 ? one.AnswerSaid : null,
                    TakenBack = piece.Snapshot.History.IsTakenBack(one),
                    Made = piece.Snapshot.History.LateOf(one)?.SaidUtc,
                    Waited = piece.Snapshot.History.LateOf(one)?.Waited.TotalSeconds,
                }),
                Readings = piece.Snapshot.Values.Select(reading => new
                {
                    reading.Quantity,
                    reading.Typed,
                    Value = reading.Si,
                    Temperature = reading.TemperatureC,
                    At = reading.AtHz,
                    reading.Pole,
                    Distance = reading.DistanceM,
                    reading.Instrument,
                    Time = reading.TimeUtc,
                    TakenBack = piece.Snapshot.History.All.Any(one => one.Id == reading.EventId && piece.Snapshot.History.IsTakenBack(one)),
                }),
            }
        );
}
