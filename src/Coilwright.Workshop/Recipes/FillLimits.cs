using Coilwright.Workshop.Recipes.Sizes;

namespace Coilwright.Workshop.Recipes;

/// <summary>
/// The shop's own limits of fill, by bobbin: a limit once stated in a recipe holds for every recipe on a bobbin of the same sizes. With
/// them goes how well the shop knows its lengths.
/// </summary>
/// <remarks>
/// Two bobbins are the same when core length, width, end radius, winding height and room agree within 0.05 mm. Of several limits the one
/// saved last holds.
/// </remarks>
public sealed class FillLimits
{
    private const double SameM = 0.05e-3;
    private readonly List<RecipeBobbin> _known;

    private FillLimits(List<RecipeBobbin> known) => _known = known;

    /// <summary>No limit known.</summary>
    public static FillLimits None { get; } = new([]);

    /// <summary>How well lengths are known for which a recipe states no ±.</summary>
    public SizeRules Sizes { get; init; } = SizeRules.Usual;

    /// <summary>Gathers the limits that these revisions state.</summary>
    public static FillLimits Of(IEnumerable<RevisionRecord> revisions) =>
        new([
            .. revisions
                .Where(revision => revision.Json.Contains("\"fillLimit\"", StringComparison.Ordinal))
                .OrderByDescending(revision => revision.TimeUtc)
                .SelectMany(revision => RecipeReader.Read(revision.Json).Value?.Coils ?? [])
                .Select(coil => coil.Bobbin)
                .Where(bobbin => bobbin.FillLimit is not null),
        ]);

    /// <summary>The same with what the shop's rules say of lengths.</summary>
    public FillLimits With(SizeRules sizes) => new(_known) { Sizes = sizes };

    /// <summary>The recipe with the shop's limit on each bobbin for which it states none itself, and the shop's rules of lengths.</summary>
    public Recipe Fill(Recipe recipe) =>
        _known.Count == 0 && ReferenceEquals(Sizes, SizeRules.Usual)
            ? recipe
            : recipe with
            {
                SizeRules = Sizes,
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
