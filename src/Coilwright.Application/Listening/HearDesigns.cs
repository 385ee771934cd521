using Coilwright.Analysis.Listening;
using Coilwright.Application.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Strings;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Listening;

/// <summary>A person wants to hear designs of the shop one against the other.</summary>
public sealed class HearDesigns : IDisposable
{
    /// <summary>Time from one string of a strum to the next, s: common practice, no source.</summary>
    public const double StrumS = 0.03;

    private const int MostSounds = 16,
        MostPickups = 16,
        AtATime = 2;

    private sealed record PickupKey(string Json, KnownParts Parts);

    private sealed record SoundKey(PickupKey Pickup, string Load, Playing Playing, PluckQuestion Pluck);

    private sealed record Pickup(ResponseSource Bare, IReadOnlyList<StringAperture> Apertures);

    private readonly RecentlyUsed<PickupKey, Pickup> _pickups = new(MostPickups);
    private readonly RecentlyUsed<SoundKey, HeardDesign> _sounds = new(MostSounds);
    private readonly SemaphoreSlim _places = new(AtATime);
    private int _made;

    /// <summary>How many sounds were worked out, not taken from memory.</summary>
    public int Made => _made;

    /// <summary>How many sounds are kept.</summary>
    public int Kept => _sounds.Count;

    /// <summary>The sounds, or every problem by its field: "design0" and on, "load0" and on, "string", "pitch", "pluck", "level".</summary>
    /// <param name="asked">What to hear.</param>
    /// <param name="recipes">The shop's recipes.</param>
    /// <param name="parts">What the shop knows of its parts.</param>
    /// <param name="cancel">Stops it: whoever asked has gone.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public async Task<ReadOutcome<HeardDesigns>> HearAsync(
        ListenQuestion asked,
        IReadOnlyList<RevisionRecord> recipes,
        KnownParts parts,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        List<Task<ReadOutcome<HeardDesign>>> sounds = [];
        for (int place = 0; place < asked.Designs.Count; place++)
        {
            if (asked.Designs[place] is not { } choice)
            {
                continue;
            }

            int at = place;
            RevisionRecord? revision = recipes.FirstOrDefault(recipe => recipe.RecipeId == choice.RecipeId);
            if (revision is null || choice.Load is null)
            {
                problems.Add(NotThere(at, revision is null));
                continue;
            }

            SoundKey key = new(new PickupKey(revision.Json, parts), choice.LoadKey, asked.Playing, asked.Pluck);
            sounds.Add(OneAsync(key, revision, choice.Load, at, cancel));
        }

        ReadOutcome<HeardDesign>[] heard = await Task.WhenAll(sounds).ConfigureAwait(false);
        problems.AddRange(heard.SelectMany(one => one.Problems).Distinct());
        HeardDesign[] designs = [.. heard.Select(one => one.Value).OfType<HeardDesign>()];
        problems.AddRange(WithoutLevel(asked, designs));
        return problems.Count > 0 || designs.Length == 0
            ? new ReadOutcome<HeardDesigns>(null, problems)
            : new ReadOutcome<HeardDesigns>(new HeardDesigns(asked, designs), []);
    }

    /// <inheritdoc/>
    public void Dispose() => _places.Dispose();

    private static Problem NotThere(int place, bool isRecipe) =>
        isRecipe
            ? new Problem($"design{place}", "no such recipe is in this shop", Allowed: "a recipe of the list")
            : new Problem($"load{place}", "no such load is known", Allowed: string.Join(", ", ListenChoice.Loads.Select(one => one.Name)));

    private static IEnumerable<Problem> WithoutLevel(ListenQuestion asked, HeardDesign[] designs) =>
        asked.Matched
            ? []
            : designs
                .Where(design => !design.IsLevelKnown)
                .Select(design => new Problem(
                    "level",
                    $"{design.Name} names no strings or magnets, so that its true level is not known",
                    Allowed: "matched levels"
                ));

    private async Task<ReadOutcome<HeardDesign>> OneAsync(
        SoundKey key,
        RevisionRecord revision,
        LoadCircuit load,
        int place,
        CancellationToken cancel
    )
    {
        if (_sounds.Find(key) is { } kept)
        {
            return Named(kept, revision, key.Load, place);
        }

        await _places.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            return _sounds.Find(key) is { } meanwhile
                ? Named(meanwhile, revision, key.Load, place)
                : await Task.Run(() => Make(key, revision, load, place, cancel), cancel).ConfigureAwait(false);
        }
        finally
        {
            _places.Release();
        }
    }

    /// <summary>Two recipes of one text sound alike under their own names.</summary>
    private static ReadOutcome<HeardDesign> Named(HeardDesign design, RevisionRecord revision, string load, int place) =>
        new(
            design with
            {
                Name = $"{revision.RecipeName} {revision.Letter}",
                LoadName = ListenChoice.Loads.First(one => one.Key == load).Name,
                Place = place,
            },
            []
        );

    private ReadOutcome<HeardDesign> Make(SoundKey key, RevisionRecord revision, LoadCircuit load, int place, CancellationToken cancel)
    {
        if (_pickups.Find(key.Pickup) is not { } pickup)
        {
            ReadOutcome<ResponseSource> made = ShopPickup.Of(
                revision.RecipeName,
                revision.Json,
                key.Pickup.Parts,
                $"design{place}",
                cancel
            );
            if (made.Value is not { } bare)
            {
                return new ReadOutcome<HeardDesign>(null, made.Problems);
            }

            IReadOnlyList<StringAperture> along = bare.Model?.Strings is null ? [] : ApertureForecast.Of(bare.Model, cancel);
            pickup = _pickups.Keep(key.Pickup, new Pickup(bare, along));
        }

        cancel.ThrowIfCancellationRequested();
        ResponseSource source = pickup.Bare.On(load);
        ReadOutcome<HeardDesign> played = source.Gains([1000]) is null
            ? Wrong(RespondToLoad.Silent(source).Why! with { Field = $"load{place}" })
            : Played(key, source, pickup.Apertures, cancel);
        if (played.Value is not { } design)
        {
            return played;
        }

        Interlocked.Increment(ref _made);
        return Named(_sounds.Keep(key, design), revision, key.Load, place);
    }

    private static ReadOutcome<HeardDesign> Played(
        SoundKey key,
        ResponseSource source,
        IReadOnlyList<StringAperture> apertures,
        CancellationToken cancel
    )
    {
        List<PluckedOn> plucks = [];
        foreach (PluckQuestion one in Plucks(key, source))
        {
            ReadOutcome<PluckedOn> on = PluckedOn.Of(source.Model, one);
            if (on.Value is not { } played)
            {
                return new ReadOutcome<HeardDesign>(null, on.Problems);
            }

            plucks.Add(played);
        }

        StringSynthesis synthesis = new(source, () => apertures);
        PlayedString[] strings = [.. plucks.Select(synthesis.Play)];
        cancel.ThrowIfCancellationRequested();
        double duration = key.Pluck.DurationS ?? ListenQuestion.UsualDurationS;
        double[] volts = synthesis.Volts([.. strings.Select((one, i) => (one, i * StrumS))], duration);
        double peak = Math.Max(volts.Max(Math.Abs), 1e-12);
        return new ReadOutcome<HeardDesign>(
            new HeardDesign(
                source.Name,
                "",
                [.. strings.Select(one => HearPluck.AnswerOf(source, key.Pluck, one, duration))],
                volts,
                source.Model?.Strings is not null
            )
            {
                PeakV = peak,
                RmsV = Math.Max(StringSynthesis.RmsOf(volts), 1e-12),
            },
            []
        );
    }

    /// <summary>The lowest string stands at the highest x: strings are numbered from the thinnest.</summary>
    private static IEnumerable<PluckQuestion> Plucks(SoundKey key, ResponseSource source) =>
        key.Playing == Playing.One
            ? [key.Pluck]
            : Enumerable
                .Range(1, PluckedOn.CountOf(source.Model))
                .Reverse()
                .Select(number => key.Pluck with { StringNumber = number, PitchHz = null });

    private static ReadOutcome<HeardDesign> Wrong(Problem problem) => new(null, [problem]);
}
