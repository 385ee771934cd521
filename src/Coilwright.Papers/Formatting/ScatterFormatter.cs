namespace Coilwright.Papers.Formatting;

/// <summary>Causes of scatter in workshop words.</summary>
public static class ScatterFormatter
{
    /// <summary>A cause by its name in the file formats, in words.</summary>
    public static string Of(string cause) =>
        cause switch
        {
            "bareDiameter" => "bare diameter",
            "overallDiameter" => "film (overall diameter)",
            "resistancePerLength" => "spool's Ω/m",
            "packing" => "packing of the lay",
            "turns" => "turn count",
            "tension" => "stretch by tension",
            "temperature" => "room temperature",
            "permeability" => "magnets and cores",
            "polarisation" => "charge of the magnets",
            "stringSteel" => "string steel",
            "clearance" => "clearance to the strings",
            "bobbinSizes" => "sizes of the bobbin",
            "poleSizes" => "sizes of the poles",
            "magnetSizes" => "sizes of magnets and keepers",
            "metalworkSizes" => "sizes of cover and plates",
            "capacitance" => "capacitance not yet measured",
            "learnt" => "what the shop's own coils scatter by",
            _ => cause,
        };
}
