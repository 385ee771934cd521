using System.Globalization;

namespace Coilwright.Workshop.Sets;

/// <summary>Pieces that could be a set.</summary>
/// <param name="Places">Name and wanted offset of each place, dB.</param>
/// <param name="Pieces">The piece of each place.</param>
public sealed record SetChoice(IReadOnlyList<(string Name, double OffsetDb)> Places, IReadOnlyList<SetPiece> Pieces)
{
    private readonly double[] _levels = [.. Pieces.Select((piece, at) => piece.Output.LevelDb - Places[at].OffsetDb)];

    /// <summary>Largest level minus smallest, with what is meant taken off, dB.</summary>
    public double ApartDb => _levels.Max() - _levels.Min();

    /// <summary>Phase and hum.</summary>
    public SetPhase Phase { get; } = SetPhase.Of([.. Places.Zip(Pieces, (place, piece) => (place.Name, piece.Coils))]);

    /// <summary>How far a piece lies from the set's mean, with what is meant taken off, dB.</summary>
    public double OffDb(int place) => _levels[place] - _levels.Average();

    /// <summary>How far apart, in words.</summary>
    public string ApartWords => string.Create(CultureInfo.InvariantCulture, $"{ApartDb:0.00} dB");

    /// <summary>The pieces in a line: "neck P-1, bridge P-2".</summary>
    public string Names => string.Join(", ", Places.Zip(Pieces, (place, piece) => $"{place.Name} {piece.Snapshot.Piece.Serial}"));

    /// <summary>The reasons, one for each piece.</summary>
    public IReadOnlyList<string> Reasons => [.. Pieces.Select((_, at) => Reason(at))];

    private string Reason(int at)
    {
        SetPiece piece = Pieces[at];
        (string place, double offsetDb) = Places[at];
        string level = Math.Abs(offsetDb) > 0 ? $", target level {SetMembership.Decibels(offsetDb)}" : "",
            off = SetMembership.Decibels(Math.Round(OffDb(at), 2)),
            caution = piece.Caution.Length > 0 ? "; " + piece.Caution : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{place} {piece.Snapshot.Piece.Serial}: {piece.Output.VoltsPerSpeed * 1e3:0.00} mV per m/s{level}, "
                + $"{off} from the set's mean; {piece.Output.How}{caution}"
        );
    }
}
