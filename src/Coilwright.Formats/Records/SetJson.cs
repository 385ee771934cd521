using Coilwright.Workshop.Sets;

namespace Coilwright.Formats.Records;

/// <summary>Writes a set in the file format "coilwright.set/1".</summary>
public static class SetJson
{
    public static string Write(PieceSet set, SetChoice choice) =>
        JsonListWriter.Write(
            new
            {
                Format = "coilwright.set/1",
                set.Name,
                set.Why,
                Apart = choice.ApartDb,
                Pieces = set.Members.Select(
                    (one, at) =>
                        new
                        {
                            one.Place.Place,
                            one.Snapshot.Piece.Serial,
                            Recipe = one.Snapshot.Recipe.Name,
                            Offset = one.Place.OffsetDb,
                            Output = choice.Pieces[at].Output.VoltsPerSpeed,
                            Off = choice.OffDb(at),
                            choice.Pieces[at].Output.How,
                            choice.Pieces[at].Caution,
                        }
                ),
                Positions = choice.Phase.Positions.Select(position => new
                {
                    position.Places,
                    position.Answer.Words,
                    position.Answer.InPhase,
                    Hum = position.Answer.HumLevelDb,
                }),
            }
        );
}
