namespace Coilwright.Web.Views.Recipes;

/// <summary>One of the views that stand under the five answers; each has a link of its own.</summary>
/// <param name="Key">How the address names it.</param>
/// <param name="Title">How the page names it.</param>
/// <param name="IsLive">True when it shows numbers of the forecast, which follow every key.</param>
public sealed record RecipeView(string Key, string Title, bool IsLive = true)
{
    /// <summary>Response, band and peak.</summary>
    public static RecipeView Sound { get; } = new("sound", "Sound");

    /// <summary>What each string does.</summary>
    public static RecipeView Strings { get; } = new("strings", "Strings");

    /// <summary>Section, build and fill.</summary>
    public static RecipeView Coil { get; } = new("coil", "Coil");

    /// <summary>What small changes do; asked for once the form rests.</summary>
    public static RecipeView Moves { get; } = new("moves", "What moves it", IsLive: false);

    /// <summary>Every number with where it comes from.</summary>
    public static RecipeView Numbers { get; } = new("numbers", "All numbers");

    /// <summary>Revisions.</summary>
    public static RecipeView History { get; } = new("history", "History", IsLive: false);

    /// <summary>In the order of the page.</summary>
    public static IReadOnlyList<RecipeView> All { get; } = [Sound, Strings, Coil, Moves, Numbers, History];

    /// <summary>The view that an address names; the first of them for any other word.</summary>
    public static RecipeView Of(string? key) => All.FirstOrDefault(view => view.Key == key) ?? Sound;
}
