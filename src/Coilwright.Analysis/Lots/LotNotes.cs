using System.Globalization;

namespace Coilwright.Analysis.Lots;

/// <summary>Sentences about lots, each written once.</summary>
internal static class LotNotes
{
    public static string Minimum(double lot, double perYear) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Minimum lot {lot:0.###}, use {perYear:0.###} a year: {lot / perYear:0.##} years of cover"
        );

    public static string Cut(double wanted, double lot, double years) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"A lot of {wanted:0.##} would outlast its shelf life of {years:0.###} years: it is cut to {lot:0.##}"
        );

    public static string Expires(double lot, double expires, double years) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"The minimum lot of {lot:0.###} outlasts its shelf life of {years:0.###} years: {expires:0.###} of each lot expires unused"
        );
}
