using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Sets;

namespace Coilwright.Workshop.Tracing;

/// <summary>Events of a piece in the shop's words, the same on screens and papers.</summary>
public static class PieceWords
{
    /// <summary>A quantity of a whole piece in words.</summary>
    public static string Quantity(string name) => name switch
    {
        "dcResistance" => "DC resistance",
        "inductance" => "inductance",
        "q" => "Q",
        "acResistance" => "AC resistance",
        "loadedPeak" => "loaded peak",
        "poleField" => "field over pole",
        MagnetCharge.ShareQuantity => "charge of the magnets, part of full",
        MagnetCharge.FieldQuantity => "charge of the magnets, field",
        "firstSwing" => "first swing",
        SetMembership.OffsetQuantity => "output meant above the set, dB",
        _ => name,
    };

    /// <summary>One event in a line.</summary>
    public static string Of(PieceEventRecord one, TracedPiece piece) => one.Kind switch
    {
        PieceEventKind.StepBegun => $"{one.Step} begun{(one.BasketId is { } basket ? $" in basket {piece.Baskets.First(own => own.Id == basket).Label}" : "")}{(one.MixId is { } mix ? $" with ink {piece.Mixes.First(own => own.Id == mix).Label}" : "")}",
        PieceEventKind.StepEnded => $"{one.Step} ended{(MagnetCharge.Of(one, piece.Life) is { } charge ? $": {charge.Words}" : "")}",
        PieceEventKind.Charged => MagnetCharge.Of(one, piece.Life)?.Words ?? "charged",
        PieceEventKind.JoinedSet when SetMembership.Of(one, piece.Life) is var set => $"into {set.Words}{(Math.Abs(set.OffsetDb) > 0 ? $", meant {SetMembership.Decibels(set.OffsetDb)}" : "")}{(set.Why.Length > 0 ? $"; chosen because: {set.Why}" : "")}",
        PieceEventKind.Held => $"held: {one.Words}",
        PieceEventKind.Lifted => $"hold lifted: {one.Words}",
        PieceEventKind.Tested => $"final test: {one.Words}",
        PieceEventKind.Shipped => $"shipped to {piece.Customers.FirstOrDefault(own => own.Id == one.CustomerId)?.Words}",
        PieceEventKind.Returned => $"returned: {one.Words}",
        PieceEventKind.Examined => $"examined: {one.Words}",
        PieceEventKind.Repaired => $"mended: {one.Words}{(one.Cost.Length > 0 ? $"; cost {one.Cost}" : "")}{(one.Answer.Length > 0 ? $"; answer: {one.Answer}" : "")}",
        PieceEventKind.Scrapped => $"scrapped: {one.Words}{(one.Cost.Length > 0 ? $"; cost {one.Cost}" : "")}",
        _ => one.Words,
    };
}
