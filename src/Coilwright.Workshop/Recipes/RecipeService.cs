using Coilwright.Analysis.Forecasts;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Recipes;

/// <summary>What came of a change to a recipe: every problem and nothing changed, or the revision as it now stands.</summary>
public sealed record RecipeOutcome(IReadOnlyList<Problem> Problems, RevisionRecord? Revision);

/// <summary>
/// The shop's recipes and the rules for changing them: a draft may be replaced, a released revision never changes, and the one after it
/// says why.
/// </summary>
/// <param name="records">The shop's records.</param>
/// <param name="clock">The time.</param>
/// <param name="forecast">Makes the forecast without which nothing is released; the fast engine's unless said.</param>
/// <param name="rules">The shop's rules, which say how well lengths are known; common practice without them.</param>
/// <param name="learning">What the shop has learnt; nothing without.</param>
public sealed class RecipeService(
    IRecipeRecords records,
    TimeProvider clock,
    Func<Recipe, Prediction>? forecast = null,
    IRulesRecords? rules = null,
    ILearningRecords? learning = null
)
{
    /// <summary>Newest revision of every recipe, by name.</summary>
    public Task<IReadOnlyList<RevisionRecord>> ListAsync(CancellationToken cancel) => records.NewestAsync(cancel);

    /// <summary>Those of a list that cannot be forecast, released or wound as they stand, with why and what to do.</summary>
    public static async Task<IReadOnlyList<UnreadableRecord>> UnreadableAsync(IEnumerable<RevisionRecord> listed)
    {
        List<RecordStatus<Recipe>> read = [];
        foreach (RevisionRecord one in listed)
        {
            string name = $"{one.RecipeName}, revision {one.Letter}";
            read.Add(await RecordStatus.ReadAsync(name, () => Task.FromResult(ReleasedRecipe.Of(one)), one.RecipeId).ConfigureAwait(false));
        }

        return read.Unreadable();
    }

    /// <summary>
    /// What the shop knows of its parts: its own limits of fill, how well lengths are known, and what its readings taught.
    /// </summary>
    public async Task<KnownParts> KnownPartsAsync(CancellationToken cancel)
    {
        KnownParts known = await KnownParts.ReadAsync(records, rules, cancel).ConfigureAwait(false);
        return learning is null
            ? known
            : known.With(new LearningBook(await learning.AllAsync(cancel).ConfigureAwait(false)).For(clock.GetUtcNow(), ("", "")));
    }

    /// <summary>
    /// Saves a recipe: into its draft, or as the next revision of a released one. Text that changes nothing makes no revision.
    /// </summary>
    /// <param name="recipeId">Client-made id of the recipe.</param>
    /// <param name="json">The document (coilwright.recipe/1).</param>
    /// <param name="reason">Why it differs from the revision before; needed after a released one.</param>
    /// <param name="person">Who writes it.</param>
    /// <param name="expectedNewest">Number of the revision it was written on; 0 for a new recipe.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="writtenOn">When that revision had been saved, if the writer saw it: a draft changed since is not overwritten.</param>
    public async Task<RecipeOutcome> SaveAsync(
        Guid recipeId,
        string json,
        string reason,
        string person,
        int expectedNewest,
        CancellationToken cancel,
        DateTimeOffset? writtenOn = null
    )
    {
        ReadOutcome<Recipe> read = RecipeReader.Read(json);
        List<Problem> problems = [.. read.Problems];
        IReadOnlyList<RevisionRecord> revisions = await records.RevisionsAsync(recipeId, cancel).ConfigureAwait(false);
        RevisionRecord? newest = revisions.MaxBy(revision => revision.Number);
        if (newest?.Json == json)
        {
            return new RecipeOutcome([], newest);
        }

        if ((newest?.Number ?? 0) != expectedNewest || (writtenOn is { } seen && newest is not null && newest.TimeUtc != seen))
        {
            problems.Add(Meanwhile(newest));
        }

        if (newest is { State: RevisionState.Released } && string.IsNullOrWhiteSpace(reason))
        {
            problems.Add(
                new Problem(
                    "reason",
                    $"revision {newest.Letter} is released and stays as it is; a reason is needed for revision "
                        + $"{RevisionRecord.LetterOf(newest.Number + 1)}",
                    null,
                    "a few words"
                )
            );
        }

        if (read.Value is { } recipe && await NameTakenAsync(recipeId, recipe.Name, cancel).ConfigureAwait(false))
        {
            problems.Add(new Problem("name", "another recipe of this shop has this name", recipe.Name, "a name of its own"));
        }

        return problems.Count > 0
            ? new RecipeOutcome(problems, null)
            : await StoreAsync(Next(recipeId, read.Value!.Name, json, reason.Trim(), person.Trim(), newest), expectedNewest, cancel)
                .ConfigureAwait(false);
    }

    /// <summary>Releases a draft: from now on it never changes and batches may be begun on it. Released twice is released once.</summary>
    public async Task<RecipeOutcome> ReleaseAsync(Guid recipeId, int number, string person, CancellationToken cancel)
    {
        RevisionRecord? draft = await records.FindRevisionAsync(recipeId, number, cancel).ConfigureAwait(false);
        if (draft is null)
        {
            return new RecipeOutcome([new Problem("revision", "there is no such revision", RevisionRecord.LetterOf(number))], null);
        }

        if (draft.State == RevisionState.Released)
        {
            return new RecipeOutcome([], draft);
        }

        ReadOutcome<Recipe> read = RecipeReader.Read(draft.Json);
        IReadOnlyList<Problem> problems = read.Value is { } recipe ? ForecastRule.Check(recipe, forecast) : read.Problems;
        return problems.Count > 0
            ? new RecipeOutcome(problems, null)
            : await StoreAsync(
                    draft with
                    {
                        State = RevisionState.Released,
                        ReleasedBy = person.Trim(),
                        TimeUtc = clock.GetUtcNow(),
                    },
                    number,
                    cancel
                )
                .ConfigureAwait(false);
    }

    private static Problem Meanwhile(RevisionRecord? newest)
    {
        if (newest is null)
        {
            return new Problem("revision", "this recipe is not in the shop yet", null, "save it as a new one");
        }

        string by = newest.Person.Length > 0 ? newest.Person : "somebody else";
        return new Problem(
            "revision",
            $"revision {newest.Letter} was saved meanwhile by {by}; nothing was overwritten",
            null,
            $"take up the change on revision {newest.Letter}"
        );
    }

    private RevisionRecord Next(Guid recipeId, string name, string json, string reason, string person, RevisionRecord? newest)
    {
        bool replaces = newest is { State: RevisionState.Draft };
        string why = reason.Length == 0 && replaces ? newest!.Reason : reason;
        return new RevisionRecord(
            recipeId,
            name,
            replaces ? newest!.Number : (newest?.Number ?? 0) + 1,
            json,
            RevisionState.Draft,
            why,
            person,
            clock.GetUtcNow()
        );
    }

    private async Task<RecipeOutcome> StoreAsync(RevisionRecord revision, int expectedNewest, CancellationToken cancel)
    {
        if (await records.SaveRevisionAsync(revision, expectedNewest, cancel).ConfigureAwait(false))
        {
            return new RecipeOutcome([], revision);
        }

        IReadOnlyList<RevisionRecord> revisions = await records.RevisionsAsync(revision.RecipeId, cancel).ConfigureAwait(false);
        return new RecipeOutcome([Meanwhile(revisions.MaxBy(one => one.Number))], null);
    }

    private async Task<bool> NameTakenAsync(Guid recipeId, string name, CancellationToken cancel) =>
        (await records.NewestAsync(cancel).ConfigureAwait(false)).Any(one =>
            one.RecipeId != recipeId && string.Equals(one.RecipeName, name, StringComparison.OrdinalIgnoreCase)
        );
}
