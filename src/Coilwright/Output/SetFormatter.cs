using System.Globalization;
using Coilwright.Workshop.Sets;

namespace Coilwright.Output;

/// <summary>Sets for people at a terminal.</summary>
internal static class SetFormatter
{
    public static void WriteProposal(TextWriter writer, SetProposal found)
    {
        if (found.Choices.Count == 0)
        {
            writer.WriteLine("No set can be made of the pieces at hand: a place would stay empty.");
        }

        for (int rank = 0; rank < found.Choices.Count; rank++)
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{rank + 1}. {found.Choices[rank].Names}: {found.Choices[rank].ApartWords} "
                        + $"apart{(rank == 0 ? ", the closest" : "")}{(found.Choices[rank].Phase.IsRed ? ", OUT OF PHASE" : "")}"
                )
            );
            if (rank == 0)
            {
                WriteChoice(writer, found.Choices[rank]);
            }
        }

        if (found.Left.Count > 0)
        {
            writer.WriteLine($"Left in stock by the closest: {string.Join(", ", found.Left.Select(life => life.Piece.Serial))}");
        }
    }

    public static void WriteChoice(TextWriter writer, SetChoice choice)
    {
        foreach (string reason in choice.Reasons)
        {
            writer.WriteLine("   " + reason);
        }

        foreach ((IReadOnlyList<string> places, Workshop.Polarity.PhaseAnswer answer) in choice.Phase.Positions)
        {
            writer.WriteLine($"   {string.Join(" + ", places)}: {answer.Words} ({SetPhase.HumWords(answer)})");
        }
    }

    public static string Line(PieceSet set) =>
        $"Set {set.Name}: {string.Join(", ", set.Members.Select(one => $"{one.Place.Place} {one.Snapshot.Piece.Serial}"))}"
        + (set.Why.Length > 0 ? $"; chosen because: {set.Why}" : "");
}
