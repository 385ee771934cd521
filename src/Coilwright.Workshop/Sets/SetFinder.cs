using Coilwright.Analysis.Pairing;

namespace Coilwright.Workshop.Sets;

/// <summary>Which of the pieces at hand make the closest sets.</summary>
public static class SetFinder
{
    /// <summary>How many choices are ranked.</summary>
    public const int Ranked = 5;

    /// <summary>The closest sets in phase, the closest first; where no set is in phase, the closest of those there are.</summary>
    /// <param name="places">Name and wanted offset of each place, dB.</param>
    /// <param name="candidates">The pieces that may take each place; a piece may be among those of several.</param>
    public static IReadOnlyList<SetChoice> Best(
        IReadOnlyList<(string Name, double OffsetDb)> places,
        IReadOnlyList<IReadOnlyList<SetPiece>> candidates
    )
    {
        // Signs follow from the revision, so whether a set is in phase is settled by the revisions at its places.
        ILookup<bool, Guid[]> byPhase = Combinations([.. candidates.Select(RevisionsOf)])
            .ToLookup(chosen =>
                SetPhase
                    .Of([.. places.Select((place, at) => (place.Name, candidates[at].First(piece => Key(piece) == chosen[at]).Coils))])
                    .IsRed
            );
        return OfCombinations(byPhase[false], places, candidates) is { Count: > 0 } inPhase
            ? inPhase
            : OfCombinations(byPhase[true], places, candidates);
    }

    private static IReadOnlyList<SetChoice> OfCombinations(
        IEnumerable<Guid[]> combinations,
        IReadOnlyList<(string Name, double OffsetDb)> places,
        IReadOnlyList<IReadOnlyList<SetPiece>> candidates
    )
    {
        List<SetChoice> choices = [];
        foreach (Guid[] chosen in combinations)
        {
            SetPiece[][] own = [.. candidates.Select((place, at) => place.Where(piece => Key(piece) == chosen[at]).ToArray())];
            SetPiece[] all = [.. own.SelectMany(place => place).DistinctBy(piece => piece.Snapshot.Piece.Id)];
            Dictionary<Guid, int> number = all.Select((piece, at) => (piece.Snapshot.Piece.Id, at))
                .ToDictionary(pair => pair.Id, pair => pair.at);
            choices.AddRange(
                ClosestSets
                    .Best(
                        [
                            .. own.Select(
                                (place, at) =>
                                    (IReadOnlyList<PlaceCandidate>)
                                        [
                                            .. place.Select(piece => new PlaceCandidate(
                                                number[piece.Snapshot.Piece.Id],
                                                piece.Output.LevelDb - places[at].OffsetDb
                                            )),
                                        ]
                            ),
                        ],
                        Ranked
                    )
                    .Select(set => new SetChoice(places, [.. set.Items.Select(item => all[item])]))
            );
        }

        return [.. choices.OrderBy(choice => choice.ApartDb).Take(Ranked)];
    }

    private static Guid[] RevisionsOf(IReadOnlyList<SetPiece> place) => [.. place.Select(Key).Distinct()];

    private static Guid Key(SetPiece piece) =>
        Readings.ReadingChain.IdWithin(
            piece.Snapshot.Piece.RecipeId,
            FormattableString.Invariant($"{piece.Snapshot.Piece.RevisionNumber}")
        );

    private static IEnumerable<Guid[]> Combinations(Guid[][] places) =>
        places.Aggregate(
            (IEnumerable<Guid[]>)
                [
                    [],
                ],
            (sets, place) => sets.SelectMany(set => place.Select(one => (Guid[])[.. set, one]))
        );
}
