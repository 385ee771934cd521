namespace Coilwright.Web.Hosting;

/// <summary>How large a form may be: far above what any page sends.</summary>
internal static class FormLimits
{
    /// <summary>Most fields of one form, and most letters of a field's name.</summary>
    public const int MostFields = 1024,
        LongestName = 2048;
}
