using Coilwright.Analysis.Learning;
using Coilwright.Physics;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Learning;

/// <summary>Coils that go on reading alike: those of a bobbin, or of a lot of wire, until somebody ends the line.</summary>
/// <param name="Name">Its short name: "B1", "W2".</param>
/// <param name="Effect">What they have in common.</param>
/// <param name="Coils">How many were wound.</param>
public sealed record LineOfCoils(string Name, Effect Effect, int Coils)
{
    /// <summary>When and why it was ended; null while it goes on.</summary>
    public LearningRecord? Ending { get; init; }

    /// <summary>What it is, in words.</summary>
    public string Words => (Effect.Kind == EffectKind.Bobbin ? "bobbin " : "wire ") + LearningWords.Of(Effect.Name);
}

/// <summary>What a set changes in the forecast of one coil of one recipe.</summary>
/// <param name="Recipe">Name of the recipe.</param>
/// <param name="Letter">Its newest released revision.</param>
/// <param name="Coil">The coil; empty where the recipe has one.</param>
/// <param name="Quantity">Quantity name of the file format.</param>
/// <param name="Spool">The spool that is meant; empty where none is named.</param>
/// <param name="Plain">Forecast without learning.</param>
/// <param name="Learnt">Forecast with it.</param>
public sealed record LearntMove(string Recipe, string Letter, string Coil, string Quantity, string Spool, Estimate Plain, Estimate Learnt);

/// <summary>A set and what became of it.</summary>
/// <param name="Set">The set.</param>
/// <param name="State">"proposed", "accepted", "in force", "declined", or "replaced" by a later proposal.</param>
/// <param name="Proposal">Its record.</param>
/// <param name="Decision">What was decided; null while nothing was.</param>
public sealed record SetStatus(LearntSet Set, string State, LearningRecord Proposal, LearningRecord? Decision);

/// <summary>What a shop has learnt, and what its readings would teach it now.</summary>
public sealed record LearningStatus
{
    /// <summary>The set that waits for a decision, with what it changes; null when there is none.</summary>
    public SetStatus? Waiting { get; init; }

    /// <summary>What that set changes.</summary>
    public IReadOnlyList<LearntMove> Moves { get; init; } = [];

    /// <summary>Past coils that it would have called otherwise; null when nothing waits.</summary>
    public LearningHindsight? Hindsight { get; init; }

    /// <summary>Why nothing is proposed; empty when something is, or nobody asked.</summary>
    public string WhyNot { get; init; } = "";

    /// <summary>Every set, in order.</summary>
    public IReadOnlyList<SetStatus> Sets { get; init; } = [];

    /// <summary>Every line, in the order in which it was first wound.</summary>
    public IReadOnlyList<LineOfCoils> Lines { get; init; } = [];

    /// <summary>Coils whose resistance could be compared.</summary>
    public int OhmCoils { get; init; }

    /// <summary>Coils whose inductance could be compared.</summary>
    public int HenryCoils { get; init; }

    /// <summary>Coils left out since nobody knows how warm they were.</summary>
    public int WithoutTemperature { get; init; }

    /// <summary>Batches that could not be read.</summary>
    public IReadOnlyList<UnreadableRecord> Unreadable { get; init; } = [];
}

/// <summary>What learning is told in.</summary>
public static class LearningWords
{
    /// <summary>A name of a bobbin or of wire and lot, for people.</summary>
    public static string Of(string name)
    {
        (string plain, int endings) = CoilKeys.FromLine(name);
        string[] parts = plain.Split('|', 2);
        string words = parts.Length == 2 ? $"{parts[0]}, {LotWords(parts[1])}" : parts[0];
        return CoilKeys.InLine(words, endings);
    }

    private static string LotWords(string lot)
    {
        string named = lot.StartsWith("spool ", StringComparison.Ordinal) ? lot : "lot " + lot;
        return lot.Length == 0 ? "no spool named" : named;
    }
}
