using Coilwright.Physics;
using Coilwright.Physics.Sizes;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Recipes.Sizes;

/// <summary>
/// The lengths of a recipe that are known within intervals: the ± that is typed, else what its part's making and the shop's rules say. A
/// length of which nothing is said is exact.
/// </summary>
/// <remarks>
/// Corners, and places along and across, are exact unless a ± is typed: what they do to first order is nothing where a pickup mirrors
/// itself.
/// </remarks>
internal sealed class RecipeSizes
{
    private readonly SizeRules _rules;
    private readonly List<PartSize> _all = [];

    private RecipeSizes(SizeRules rules) => _rules = rules;

    /// <summary>All of them, in the order of the model's parts.</summary>
    public static IReadOnlyList<PartSize> Of(Recipe recipe)
    {
        RecipeSizes sizes = new(recipe.SizeRules);
        for (int c = 0; c < recipe.Coils.Count; c++)
        {
            sizes.AddBobbin(recipe.Coils[c].Bobbin, c);
            foreach ((int row, RecipePole pole) in RecipeModelBuilder.PolesOf(recipe.Coils[c]).Index())
            {
                sizes.AddPoles(pole, c, row);
            }
        }

        foreach ((int place, (string name, RecipePoint size, RecipePoint centre, PartMaking making)) in BarsOf(recipe).Index())
        {
            sizes.AddBar(name, size, centre, making, place);
        }

        foreach ((int place, RecipeMetalwork sheet) in recipe.Metalwork.Where(part => part.Shape != MetalworkShape.Keeper).Index())
        {
            sizes.AddSheet(sheet, place);
        }

        sizes.AddClearance(recipe.Strings);
        return sizes._all;
    }

    private static IEnumerable<(string Name, RecipePoint Size, RecipePoint Centre, PartMaking Making)> BarsOf(Recipe recipe) =>
        [
            .. recipe.Magnets.Select(magnet => ("magnet", magnet.Size, magnet.Centre, magnet.Making)),
            .. recipe
                .Metalwork.Where(part => part.Shape == MetalworkShape.Keeper)
                .Select(part => ("keeper", part.Size!, part.Centre!, part.Making)),
        ];

    private void AddBobbin(RecipeBobbin bobbin, int coil)
    {
        void Add(SizeKind kind, string name, Entered? length) => Size(kind, coil, 0, $"{name} of the bobbin", length, bobbin.Making);
        Add(SizeKind.CoreLength, "core length", bobbin.CoreLength);
        Add(SizeKind.CoreWidth, "core width", bobbin.CoreWidth);
        bool follows = bobbin.EndRadius.Si > bobbin.CoreWidth.Si / 2 - 1e-7;
        if (bobbin.EndRadius.Si > 0 && (!follows || bobbin.EndRadius.HalfWidth is not null))
        {
            Add(SizeKind.EndRadius, "end radius", bobbin.EndRadius);
        }

        Add(SizeKind.WindingHeight, "winding height", bobbin.WindingHeight);
        Add(SizeKind.MostBuild, "room for the winding", bobbin.MaxBuild);
        Add(SizeKind.Wall, "wall", bobbin.Wall);
        Add(SizeKind.Flange, "flange", bobbin.Flange);
    }

    private void AddPoles(RecipePole pole, int coil, int row)
    {
        bool blade = pole.Shape == PoleShape.Blade;
        string of = blade ? "blade" : "poles";
        void Add(SizeKind kind, string name, Entered? length) => Size(kind, coil, row, $"{name} of the {of}", length, pole.Making);
        Add(SizeKind.PoleDiameter, blade ? "thickness" : "diameter", pole.Diameter);
        Add(SizeKind.PoleWidth, "width", blade ? pole.Width : null);
        Add(SizeKind.PoleLength, "length", pole.Length);
        Add(SizeKind.HeadDiameter, "head diameter", pole.HeadDiameter);
        Add(SizeKind.HeadHeight, "head height", pole.HeadHeight);
        Add(SizeKind.PoleSpacing, "spacing", pole.Spacing);
        if (pole.PositionsWithinM is { } within && pole.PositionsM.Max(Math.Abs) is > 0 and var outermost)
        {
            Add(SizeKind.PoleSpacing, "places", new Entered(outermost, "", "mm") { HalfWidth = within });
        }

        Place(
            SizeKind.PoleTop,
            coil,
            row,
            $"top of the {of}",
            new Entered(pole.TopsM[0], "", "mm") { HalfWidth = pole.TopsWithinM },
            pole.Making
        );
    }

    private void AddBar(string name, RecipePoint size, RecipePoint centre, PartMaking making, int place)
    {
        Size(SizeKind.BarLength, place, 0, $"length of the {name}", size.X, making);
        Size(SizeKind.BarWidth, place, 0, $"width of the {name}", size.Y, making);
        Size(SizeKind.BarHeight, place, 0, $"height of the {name}", size.Z, making);
        Place(SizeKind.BarX, place, 0, $"place of the {name} along the row", centre.X, making, onlyTyped: true);
        Place(SizeKind.BarY, place, 0, $"place of the {name} across the row", centre.Y, making, onlyTyped: true);
        Place(SizeKind.BarZ, place, 0, $"height of the {name}'s middle", centre.Z, making);
    }

    private void AddSheet(RecipeMetalwork sheet, int place)
    {
        string of = sheet.Shape == MetalworkShape.Cover ? "cover" : "plate";
        Size(SizeKind.SheetThickness, place, 0, $"thickness of the {of}", sheet.Thickness, sheet.Making);
        Size(SizeKind.SheetLength, place, 0, $"length of the {of}", sheet.Length, sheet.Making);
        Size(SizeKind.SheetWidth, place, 0, $"width of the {of}", sheet.Width, sheet.Making);
        Place(SizeKind.SheetTop, place, 0, $"top of the {of}", sheet.Top, sheet.Making);
        Place(SizeKind.SheetBottom, place, 0, $"bottom of the {of}", sheet.Bottom, sheet.Making);
        if (sheet.Corner?.HalfWidth is not null)
        {
            Size(SizeKind.SheetCorner, place, 0, $"corner of the {of}", sheet.Corner, sheet.Making);
        }
    }

    private void AddClearance(RecipeStrings? strings)
    {
        if (strings?.Clearance is not { } clearance)
        {
            return;
        }

        double withinM = clearance.HalfWidth ?? _rules.ClearanceM;
        if (withinM <= 0)
        {
            return;
        }

        string source = clearance.HalfWidth is null
            ? FormattableString.Invariant($"set by hand: ±{withinM * 1e3:0.###} mm, {_rules.Origin}")
            : Typed(withinM);
        _all.Add(
            new PartSize(SizeKind.Clearance, 0, 0, "clearance to the strings", Around(clearance.Si, withinM, Basis.Assumed))
            {
                Source = source,
            }
        );
    }

    private void Size(SizeKind kind, int part, int row, string name, Entered? length, PartMaking making)
    {
        if (length is { } known)
        {
            Add(kind, part, row, name, known, making, known.Si);
        }
    }

    private void Place(SizeKind kind, int part, int row, string name, Entered place, PartMaking making, bool onlyTyped = false)
    {
        if (!onlyTyped || place.HalfWidth is not null)
        {
            Add(kind, part, row, name, place, making, lengthM: null);
        }
    }

    private void Add(SizeKind kind, int part, int row, string name, Entered entered, PartMaking making, double? lengthM)
    {
        (double withinM, Basis basis, string source) = entered.HalfWidth is { } typed
            ? (typed, BasisOf(making), Typed(typed))
            : _rules.WithinOf(making, lengthM);
        if (withinM > 0)
        {
            _all.Add(
                new PartSize(kind, part, row, name, Around(entered.Si, withinM, basis))
                {
                    Source = source,
                    PieceShare = _rules.ShareOf(making),
                }
            );
        }
    }

    private static Basis BasisOf(PartMaking making) => making.Measured ? Basis.Measured : Basis.Assumed;

    private static Estimate Around(double value, double withinM, Basis basis) => new(value, value - withinM, value + withinM, basis);

    private static string Typed(double withinM) => FormattableString.Invariant($"as typed: ±{withinM * 1e3:0.####} mm");
}
