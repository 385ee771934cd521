namespace Coilwright.Web.Views;

/// <summary>The field of a form that says which coil a tag means.</summary>
public static class SpoolQuestionField
{
    public static string NameOf(string tag) => $"coil {tag}";
}
