namespace Coilwright.Web.Views;

/// <summary>One of the five places of the program, in the order of the work, with the pages that stand in it.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Pages">Address and name of its pages; the first is where the place opens.</param>
public sealed record Place(string Name, IReadOnlyList<(string Address, string Name)> Pages)
{
    /// <summary>The five.</summary>
    public static IReadOnlyList<Place> All { get; } =
    [
        new("Today", [("/", "Today")]),
        new("Design", [("/recipes", "Recipes"), ("/recipes/new", "New recipe"), ("/compare", "Compare"), ("/listen", "Listen")]),
        new("Wind", [("/batches", "Batches"), ("/spools", "Spools"), ("/machines", "Winders"), ("/charts", "Charts")]),
        new(
            "Finish",
            [
                ("/assembly", "Assembly"),
                ("/sets", "Sets"),
                ("/clocks", "In progress"),
                ("/magnets", "Magnets"),
                ("/test", "Final test"),
                ("/pieces", "Pieces"),
            ]
        ),
        new(
            "Shop",
            [
                ("/shop", "Customers"),
                ("/measure", "Measure"),
                ("/shop/rules", "Rules"),
                ("/shop/people", "People"),
                ("/shop/instruments", "Instruments"),
                ("/shop/files", "Bring in files"),
                ("/shop/backups", "Backups"),
            ]
        ),
    ];

    /// <summary>Coils are wound and read here, which the room's temperature bears on.</summary>
    public bool IsWound => Name == "Wind";

    /// <summary>The place that a page stands in; null for one that stands in none.</summary>
    public static Place? Of(string page) => All.FirstOrDefault(place => place.Pages.Any(one => one.Name == page));
}
