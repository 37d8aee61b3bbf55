using Tamis.Desserts;

namespace Tamis.Views;

public static partial class Show
{
    /// <summary>One piece of a trial cut through the middle, to scale, with the mass of each layer.</summary>
    /// <param name="dessert">The dessert.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="montageSheet">Another sheet of the dessert folder that says what stands where; <c>montage.csv</c> where null.</param>
    public static Html Section(Dessert dessert, string trial, string? montageSheet = null) => (montageSheet is null ? dessert.PieceOf(trial) : dessert.PieceOf(trial, montageSheet)) is { } piece
        ? CrossSection.Of($"{dessert.Name}, {trial}", piece, tinted: dessert.PieceOf(trial)?.Layers.Select(layer => layer.Component).ToArray())
        : Notes.LookAt(Html.Of($"There is no montage.csv: a sheet of what stands where would add the cross-section and the mass of each component in a piece."));
}
