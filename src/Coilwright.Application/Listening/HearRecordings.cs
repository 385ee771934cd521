using Coilwright.Application.Curves;
using Coilwright.Bench;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Listening;

/// <summary>A person wants to hear their own dry recording as another pickup would have given it.</summary>
/// <remarks>Recordings are kept in memory alone: the last three, until the program stops. One is worked out at a time.</remarks>
/// <param name="revoice">Exchanges the pickups.</param>
public sealed class HearRecordings(Revoice revoice) : IDisposable
{
    /// <summary>Most recordings that are kept.</summary>
    public const int MostKept = 3;

    private readonly RecentlyUsed<Guid, HeardRecording> _kept = new(MostKept);
    private readonly SemaphoreSlim _place = new(1);

    private sealed record NamedSource(string Name, ResponseSource Source);

    /// <summary>The two sounds, or every problem by its field: "from" and "to", "fromLoad" and "toLoad", "recording".</summary>
    /// <param name="asked">What to hear.</param>
    /// <param name="recipes">The shop's recipes.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="cancel">Stops it before it begins, and between its steps.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public async Task<ReadOutcome<HeardRecording>> HearAsync(
        RevoiceQuestion asked,
        IReadOnlyList<RevisionRecord> recipes,
        KnownParts parts,
        CancellationToken cancel
    )
    {
        await _place.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            return await Task.Run(() => Made(asked, recipes, parts, cancel), cancel).ConfigureAwait(false);
        }
        finally
        {
            _place.Release();
        }
    }

    /// <summary>A recording that was worked out; null when it is not kept any more, or never was.</summary>
    /// <param name="id">Its key.</param>
    public HeardRecording? Find(Guid id) => _kept.Find(id);

    /// <inheritdoc/>
    public void Dispose() => _place.Dispose();

    private ReadOutcome<HeardRecording> Made(
        RevoiceQuestion asked,
        IReadOnlyList<RevisionRecord> recipes,
        KnownParts parts,
        CancellationToken cancel
    )
    {
        ReadOutcome<NamedSource> from = SourceOf(asked.From, "from", recipes, parts, cancel),
            to = SourceOf(asked.To, "to", recipes, parts, cancel);
        ReadOutcome<WaveFile> wave =
            asked.Wave.Length > 0
                ? WaveFile.Read(asked.Wave)
                : new ReadOutcome<WaveFile>(null, [new Problem("", "choose the recording", null, "a WAV file")]);
        List<Problem> problems = [.. from.Problems, .. to.Problems, .. wave.Problems.Select(one => one with { Field = "recording" })];
        if (from.Value is not { } first || to.Value is not { } second || wave.Value is not { } recording)
        {
            return new ReadOutcome<HeardRecording>(null, problems);
        }

        cancel.ThrowIfCancellationRequested();
        ReadOutcome<RevoicedSound> sound = revoice.Exchange(first.Source, second.Source, recording);
        return sound.Value is { } made
            ? new ReadOutcome<HeardRecording>(Kept(new HeardRecording(Guid.NewGuid(), asked, first.Name, second.Name, made)), [])
            : new ReadOutcome<HeardRecording>(null, [.. sound.Problems.Select(OfField)]);
    }

    private HeardRecording Kept(HeardRecording heard) => _kept.Keep(heard.Id, heard);

    private static Problem OfField(Problem problem) => problem.Field == "in" ? problem with { Field = "recording" } : problem;

    private static ReadOutcome<NamedSource> SourceOf(
        PickupOfSound asked,
        string field,
        IReadOnlyList<RevisionRecord> recipes,
        KnownParts parts,
        CancellationToken cancel
    )
    {
        if (asked.Load is not { } load)
        {
            string allowed = string.Join(", ", ListenChoice.Loads.Select(one => one.Name));
            return Wrong(new Problem(field + "Load", "no such load is known", Allowed: allowed));
        }

        if (asked.FileText.Length > 0)
        {
            return OfFile(asked, field, load, cancel);
        }

        if (recipes.FirstOrDefault(recipe => recipe.RecipeId == asked.RecipeId) is not { } revision)
        {
            return Wrong(new Problem(field, "choose the pickup", Allowed: "a recipe of the list, or a file"));
        }

        string name = $"{revision.RecipeName} {revision.Letter}";
        ReadOutcome<ResponseSource> bare = ShopPickup.Of(name, revision.Json, parts, field, cancel);
        return Named(bare, name, asked, load);
    }

    private static ReadOutcome<NamedSource> OfFile(PickupOfSound asked, string field, LoadCircuit load, CancellationToken cancel)
    {
        ReadOutcome<ResponseSource> read = ResponseSource.Read(asked.FileText, asked.FileName, load, cancel);
        Problem[] problems = [.. read.Problems.Select(one => one with { Field = field, Message = In(asked.FileName, one) })];
        return Named(new ReadOutcome<ResponseSource>(read.Value, problems), read.Value?.Name ?? "", asked, load);
    }

    private static string In(string file, Problem problem) =>
        problem.Field.Length > 0 ? $"the file {file}, {problem.Field}: {problem.Message}" : $"the file {file}: {problem.Message}";

    private static ReadOutcome<NamedSource> Named(ReadOutcome<ResponseSource> made, string name, PickupOfSound asked, LoadCircuit load)
    {
        string loaded = ListenChoice.Loads.First(one => one.Key == asked.LoadKey).Name.ToLowerInvariant();
        return made.Value is { } source
            ? new ReadOutcome<NamedSource>(new NamedSource($"{name}, on load {loaded}", source.On(load)), [])
            : new ReadOutcome<NamedSource>(null, made.Problems);
    }

    private static ReadOutcome<NamedSource> Wrong(Problem problem) => new(null, [problem]);
}
