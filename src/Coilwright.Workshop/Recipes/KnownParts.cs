using Coilwright.Workshop.Learning;
using Coilwright.Workshop.Recipes.Sizes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Recipes;

/// <summary>
/// What a shop knows of its parts beside what a recipe says: its own limits of fill, by bobbin (one once stated in a recipe holds for every
/// recipe on a bobbin of the same sizes), and how well it knows its lengths. Whatever is forecast of a stored recipe is forecast with it.
/// </summary>
/// <remarks>
/// Two bobbins are the same when core length, width, end radius, winding height and room agree within 0.05 mm. Of several limits the one
/// saved last holds.
/// </remarks>
public sealed class KnownParts : IEquatable<KnownParts>
{
    internal const double SameM = 0.05e-3;
    private readonly List<RecipeBobbin> _known;

    private KnownParts(List<RecipeBobbin> known) => _known = known;

    /// <summary>Nothing but common practice.</summary>
    public static KnownParts None { get; } = new([]);

    /// <summary>How well lengths are known for which a recipe states no ±.</summary>
    public SizeRules Sizes { get; init; } = SizeRules.Usual;

    /// <summary>What it has learnt from its readings; null takes the plain forecast.</summary>
    public RecipeLearning? Learning { get; init; }

    /// <summary>Gathers the limits that these revisions state.</summary>
    public static KnownParts Of(IEnumerable<RevisionRecord> revisions) =>
        new([
            .. revisions
                .Where(revision => revision.Json.Contains("\"fillLimit\"", StringComparison.Ordinal))
                .OrderByDescending(revision => revision.TimeUtc)
                .SelectMany(revision => RecipeReader.Read(revision.Json).Value?.Coils ?? [])
                .Select(coil => coil.Bobbin)
                .Where(bobbin => bobbin.FillLimit is not null),
        ]);

    /// <summary>What a shop knows today.</summary>
    /// <param name="recipes">Its recipes.</param>
    /// <param name="rules">Its rules; common practice without them.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<KnownParts> ReadAsync(IRecipeRecords recipes, IRulesRecords? rules, CancellationToken cancel)
    {
        KnownParts known = Of(await recipes.NewestAsync(cancel).ConfigureAwait(false));
        return rules is null ? known : known.With((await RuleService.CurrentAsync(rules, cancel).ConfigureAwait(false)).Sizes);
    }

    /// <summary>The same with what the shop's rules say of lengths.</summary>
    public KnownParts With(SizeRules sizes) => new(_known) { Sizes = sizes, Learning = Learning };

    /// <summary>The same with what the shop has learnt; null takes it away.</summary>
    public KnownParts With(RecipeLearning? learning) => new(_known) { Sizes = Sizes, Learning = learning };

    /// <summary>The recipe with the shop's limit on each bobbin for which it states none itself, and the shop's rules of lengths.</summary>
    public Recipe Fill(Recipe recipe) =>
        _known.Count == 0 && Sizes == SizeRules.Usual && Learning is null
            ? recipe
            : recipe with
            {
                SizeRules = Sizes,
                Learning = Learning,
                Coils =
                [
                    .. recipe.Coils.Select(coil =>
                        coil with
                        {
                            Bobbin = coil.Bobbin with { FillLimit = coil.Bobbin.FillLimit ?? Find(coil.Bobbin) },
                        }
                    ),
                ],
            };

    /// <summary>The same limits and the same rules of lengths, so that the same forecasts come of them.</summary>
    public bool Equals(KnownParts? other) =>
        other is not null && Sizes == other.Sizes && Equals(Learning, other.Learning) && _known.SequenceEqual(other._known);

    public override bool Equals(object? obj) => Equals(obj as KnownParts);

    public override int GetHashCode() => HashCode.Combine(Sizes, Learning, _known.Count);

    private double? Find(RecipeBobbin bobbin) => _known.Find(known => Same(known, bobbin))?.FillLimit;

    private static bool Same(RecipeBobbin a, RecipeBobbin b) =>
        Near(a.CoreLength.Si, b.CoreLength.Si)
        && Near(a.CoreWidth.Si, b.CoreWidth.Si)
        && Near(a.EndRadius.Si, b.EndRadius.Si)
        && Near(a.WindingHeight.Si, b.WindingHeight.Si)
        && a.MaxBuild is { } one
        && b.MaxBuild is { } other
        && Near(one.Si, other.Si);

    private static bool Near(double a, double b) => Math.Abs(a - b) <= SameM;
}
