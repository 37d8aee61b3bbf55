using Tamis.Tables;

namespace Tamis.Composition;

/// <summary>Foods and what is in 100 g of their edible portion.</summary>
/// <remarks>Immutable. A content that no file states is unknown, never zero.</remarks>
public sealed class CompositionTable
{
    private readonly ContentGrid _grid;
    private readonly FoodIndex _index;
    private readonly NutrientProfile?[] _profiles;
    private readonly ILookup<string, FoodMeasure> _measures;
    private readonly Lazy<IReadOnlyList<FoodContent>> _contents;

    internal CompositionTable(IReadOnlyList<Food> foods, NutrientList nutrients, ContentGrid grid, IReadOnlyList<FoodMeasure> measures)
    {
        Foods = foods;
        Nutrients = nutrients;
        Measures = measures;
        _grid = grid;
        _index = new(foods);
        _profiles = new NutrientProfile?[foods.Count];
        _measures = measures.ToLookup(measure => measure.Food);
        _contents = new(() => [.. Enumerable.Range(0, foods.Count).SelectMany(FlatRow)]);
    }

    /// <summary>The foods in the order of the table.</summary>
    public IReadOnlyList<Food> Foods { get; }

    /// <summary>The nutrients in the order of its columns.</summary>
    public NutrientList Nutrients { get; }

    /// <summary>Pieces, spoons and cups of all foods.</summary>
    public IReadOnlyList<FoodMeasure> Measures { get; }

    /// <summary>Words by which a food is known for a compound where nothing states it.</summary>
    public CompoundWords CompoundWords { get; init; } = CompoundWords.None;

    /// <summary>What to know of how its files were read, such as letters that are not UTF-8; none for most.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>The whole table as flat rows, one for each content that is known: what a notebook shows and a data frame takes.</summary>
    public IReadOnlyList<FoodContent> Contents => _contents.Value;

    /// <summary>Reads a table from its folder: foods, nutrients, contents, measures and sources.</summary>
    /// <exception cref="TableException">Something in it must be mended; every problem of every file is named.</exception>
    public static CompositionTable Load(string folder) => CompositionFiles.Load(folder);

    /// <summary>The same table with the foods of another behind its own, in the nutrients of this one. A food that both have, by its id, stays as it is here.</summary>
    /// <param name="other">A table that states its nutrients in the units of this one, as an import does.</param>
    /// <exception cref="TableException">The other table states a nutrient in another unit.</exception>
    public CompositionTable With(CompositionTable other)
    {
        CellProblem[] units = [.. other.Nutrients.All.Where(nutrient => Nutrients.IndexOf(nutrient.Tag) >= 0 && Nutrients[nutrient.Tag].Unit != nutrient.Unit)
            .Select(nutrient => new CellProblem("nutrients.csv", 0, "unit", nutrient.Unit, $"{Nutrients[nutrient.Tag].Unit} for {nutrient.Tag}, as the table has it that these foods are put to, and not {nutrient.Unit}"))];
        if (units.Length > 0) throw new TableException(units);
        var own = Foods.Select(food => FoodIndex.IdKey(food.Id)).ToHashSet();
        int[] added = [.. Enumerable.Range(0, other.Foods.Count).Where(row => !own.Contains(FoodIndex.IdKey(other.Foods[row].Id)))];
        ContentGrid.Builder grid = new(Foods.Count + added.Length, Nutrients.Count);
        int[] same = [.. Enumerable.Range(0, Nutrients.Count)], there = [.. Nutrients.All.Select(nutrient => other.Nutrients.IndexOf(nutrient.Tag))];
        for (var row = 0; row < Foods.Count; row++) grid.Take(row, _grid, row, same, firstSource: 0);
        for (var row = 0; row < added.Length; row++) grid.Take(Foods.Count + row, other._grid, added[row], there, _grid.Sources.Count);
        Derivation.Fill(grid, Nutrients, Foods.Count + added.Length);
        var names = added.Select(row => other.Foods[row].Id).ToHashSet(Names.Comparer);
        return new([.. Foods, .. added.Select(row => other.Foods[row])], Nutrients, grid.Build([.. _grid.Sources, .. other._grid.Sources]),
            [.. Measures, .. other.Measures.Where(measure => names.Contains(measure.Food))]) { CompoundWords = CompoundWords, Remarks = [.. Remarks, .. other.Remarks] };
    }

    /// <summary>The food of an id or a name; case and blanks do not count, nor the leading zeros of a number.</summary>
    /// <exception cref="FoodNotFoundException">There is none; the exception names those near it.</exception>
    public Food Find(string nameOrId) => Foods[Row(nameOrId)];

    /// <summary>The food of an id or a name, or null.</summary>
    public Food? Seek(string nameOrId) => _index.Row(nameOrId) is var row and >= 0 ? Foods[row] : null;

    /// <summary>The names (or, for a dataset and number, the ids) of foods near a text, nearest first.</summary>
    public IReadOnlyList<string> Nearest(string text, int most = 3) => _index.Nearest(text, most);

    /// <summary>What is in 100 g of a food, by its id or name.</summary>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    public NutrientProfile Profile(string nameOrId)
    {
        var row = Row(nameOrId);
        return _profiles[row] ??= new(
            Foods[row].Name, Nutrients, [.. Enumerable.Range(0, Nutrients.Count).Select(column => this[row, column])], Foods[row].NitrogenFactor);
    }

    /// <summary>One content of a food; unknown where the table has no such nutrient.</summary>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    public Content Content(string nameOrId, string tag) =>
        Nutrients.IndexOf(tag) is var column and >= 0 ? this[Row(nameOrId), column] : Composition.Content.Unknown;

    /// <summary>The pieces, spoons and cups of a food.</summary>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    public IEnumerable<FoodMeasure> MeasuresOf(string nameOrId) => _measures[Find(nameOrId).Id];

    /// <summary>The density of a food by its largest measure of volume, since a spoon's grams are rounded more coarsely; null where none gives one.</summary>
    /// <remarks>For a liquid it is its density, for a powder or pieces how they pack; the range is that of the rounding of the grams.</remarks>
    /// <exception cref="FoodNotFoundException">There is no such food.</exception>
    public FoodDensity? DensityOf(string nameOrId) =>
        MeasuresOf(nameOrId).Where(measure => measure.VolumeMillilitres is > 0).MaxBy(measure => measure.VolumeMillilitres) is { } largest ? FoodDensity.Of(largest) : null;

    /// <summary>The table's contents as a matrix for sums over many mixtures: row i is food i.</summary>
    public ContentMatrix ToMatrix() => new(_grid.Rows, _grid.Columns, _grid.Stride, _grid.Per100Grams);

    /// <summary>The same matrix with every content below a limit at a share of its limit, 0 to 1, in place of the middle.</summary>
    internal ContentMatrix ToMatrix(double belowLimit) => new(_grid.Rows, _grid.Columns, _grid.Stride, _grid.WithBelowLimitAt(belowLimit));

    /// <summary>The lowest and highest sample behind a content, or the bounds of an estimate; null where the data do not say.</summary>
    internal Interval? Extremes(int row, int column) => _grid.Extremes(row, column);

    /// <summary>Whether a content was filled in by the kit and stands in no record.</summary>
    internal bool IsFilledIn(int row, int column) => ContentGrid.IsFilledIn(_grid.States[row * _grid.Stride + column]);

    private Content this[int row, int column] => _grid.IsDerived(row, column)
        ? Nutrients.All[column].Derived!.Of(tag => this[row, Nutrients.IndexOf(tag)], Nutrients)
        : _grid[row, column];

    private int Row(string nameOrId) => _index.Row(nameOrId) is var row and >= 0 ? row : throw new FoodNotFoundException(nameOrId, Nearest(nameOrId));

    private IEnumerable<FoodContent> FlatRow(int row) =>
        from column in Enumerable.Range(0, Nutrients.Count)
        let content = this[row, column]
        where content.IsKnown
        let nutrient = Nutrients.All[column]
        let range = content.Range
        select new FoodContent(Foods[row].Id, Foods[row].Name, Foods[row].Group, nutrient.Tag, nutrient.Word, content.State,
            content.Per100Grams, nutrient.Unit, range?.Low, range?.High, content.Samples, content.StandardDeviation, content.Source!.ToString());
}

/// <summary>One content as a flat row.</summary>
/// <param name="Food">The food's id.</param>
/// <param name="Name">The food's name.</param>
/// <param name="Group">The food's group.</param>
/// <param name="Tag">The nutrient's tagname.</param>
/// <param name="Nutrient">The nutrient's word.</param>
/// <param name="State">What kind of statement it is.</param>
/// <param name="Per100Grams">The figure in 100 g of edible portion, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The nutrient's unit.</param>
/// <param name="Low">The lower end of its range, null where the data give none.</param>
/// <param name="High">The upper end of its range, null where the data give none.</param>
/// <param name="Samples">How many samples were analysed, null where the data do not say.</param>
/// <param name="StandardDeviation">Their standard deviation, null where the data do not say.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record FoodContent(
    string Food, string Name, string Group, string Tag, string Nutrient, ContentState State, double Per100Grams, string Unit,
    double? Low, double? High, int? Samples, double? StandardDeviation, string Source);
