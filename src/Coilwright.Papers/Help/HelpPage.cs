namespace Coilwright.Papers.Help;

/// <summary>A document of the project as it stands inside the program.</summary>
/// <param name="Name">What its address ends with, for example "first-hour".</param>
/// <param name="Title">Its heading.</param>
/// <param name="Markdown">Its text.</param>
public sealed record HelpPage(string Name, string Title, string Markdown)
{
    /// <summary>Where the pages show it.</summary>
    public string Address => "/help/" + Name;
}
