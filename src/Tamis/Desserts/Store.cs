using Tamis.Composition;
using Tamis.Formulas;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>Something about an ingredient of the store that a reader should know.</summary>
public sealed record StoreRemark(string Ingredient, string Text);

/// <summary>What a kitchen has, shared by all its desserts: ingredients with their foods and documents.</summary>
/// <param name="Ingredients">The ingredients, with what is in 100 g of each where that is known.</param>
/// <param name="AsOf">The day whose documents count; null where every document counts, the newest first.</param>
/// <param name="Remarks">What a reader should know: a document later than the day, an ingredient without figures.</param>
public sealed record Store(IngredientList Ingredients, DateOnly? AsOf, IReadOnlyList<StoreRemark> Remarks)
{
    /// <summary>The folder of a store with a composition table of its own.</summary>
    public const string TableFolder = "composition";

    /// <summary>A kitchen of which nothing is written: ingredients are known by name alone.</summary>
    public static Store None { get; } = new(IngredientList.None, null, []);

    /// <summary>Reads the ingredients sheet and, where there is one, the specifications sheet.</summary>
    /// <param name="ingredients"><c>ingredients.csv</c>.</param>
    /// <param name="specifications"><c>specifications.csv</c>, or null.</param>
    /// <param name="table">The composition table that foods are found in.</param>
    /// <param name="stated">What the columns of a document state.</param>
    /// <param name="asOf">The newest document on or before this day counts; null takes the newest of all.</param>
    /// <param name="problems">Receives every cell that must be mended.</param>
    public static Store Read(Sheet ingredients, Sheet? specifications, CompositionTable table, StatedFigures stated, DateOnly? asOf, List<CellProblem> problems)
    {
        List<(Ingredient Ingredient, SheetRow Row)> read = [];
        foreach (var row in ingredients.Rows)
            if (IngredientOf(row, problems) is { } ingredient)
            {
                if (read.Any(each => Names.Same(each.Ingredient.Name, ingredient.Name)))
                    problems.Add(row.Problem("ingredient", "a name that no other row has"));
                else read.Add((ingredient, row));
            }

        List<StoreRemark> remarks = [];
        var documents = specifications is null ? [] : Documents(specifications, [.. read.Select(each => each.Ingredient)], stated, problems);
        Ingredient[] all = [.. read.Select(each =>
        {
            var document = Newest(documents.Where(document => Names.Same(document.Ingredient, each.Ingredient.Name)), asOf, remarks);
            return WithFigures(each.Ingredient, each.Row, document, table, stated, problems);
        })];
        return new(new(all), asOf, remarks);
    }

    private sealed record Document(string Ingredient, string Name, DateOnly? Date, SheetRow Row);

    private static Ingredient? IngredientOf(SheetRow row, List<CellProblem> problems)
    {
        var reader = new RowReader(row, problems);
        var name = reader.Required("ingredient");
        var ingredient = new Ingredient
        {
            Name = name ?? "",
            Food = reader.Text("food"),
            Piece = reader.Text("piece"),
            PieceGrams = reader.Number("piece_g", 1e-6, 1e6),
            DensityGramsPerMillilitre = reader.Number("density_g_ml", 0.01, 25),
            EdiblePercent = reader.Percent("edible_percent", 1e-6, 100) ?? 100,
            LabelName = reader.Text("label_name"),
            Allergens = LookedAt(reader.Words("allergens")),
            MayContain = LookedAt(reader.Words("may_contain")),
            Function = reader.Text("function"),
            AdditiveNumbers = reader.Words("e_number"),
            SupplierList = reader.Text("ingredient_list"),
            AdditiveList = Looked(row["additives"]),
            Notes = row["notes"],
            Origin = row.Origin("ingredient"),
        };
        return name is { Length: > 0 } ? FunctionalData.Over(ingredient, reader) : null;
    }

    // 'none' says that somebody looked; a blank says that nobody did.
    internal static IReadOnlyList<string>? LookedAt(IReadOnlyList<string> words) =>
        words.Count == 0 ? null : words is [var only] && Names.Same(only, "none") ? [] : words;

    // Every document is read, also one that was superseded or does not count yet: its figures are shown, and its day may come.
    private static List<Document> Documents(Sheet sheet, IReadOnlyList<Ingredient> ingredients, StatedFigures stated, List<CellProblem> problems)
    {
        List<Document> documents = [];
        foreach (var row in sheet.Rows)
        {
            var reader = new RowReader(row, problems);
            var name = reader.Required("ingredient");
            var date = reader.Date("date");
            var ingredient = ingredients.FirstOrDefault(each => Names.Same(each.Name, name));
            stated.Over(null, name, reader);
            FunctionalData.Over(ingredient ?? new() { Name = name }, reader);
            reader.Number("sulphites_mg_kg", 0);
            if (name.Length == 0) continue;
            if (ingredient is null)
                problems.Add(row.Problem("ingredient", $"an ingredient of ingredients.csv{Near(Names.Nearest(name, ingredients.Select(each => each.Name)))}"));
            else documents.Add(new(name, reader.Text("document") ?? "a document without a name", date, row));
        }
        return documents;
    }

    private static Document? Newest(IEnumerable<Document> documents, DateOnly? asOf, List<StoreRemark> remarks)
    {
        Document[] all = [.. documents.OrderBy(document => document.Date ?? DateOnly.MinValue)];
        if (all.Length == 0) return null;
        if (asOf is not { } day || all.LastOrDefault(document => document.Date is null || document.Date <= day) is not { } inTime)
        {
            if (asOf is not null && all[0].Date is { } first)
                remarks.Add(new(all[0].Ingredient, FormattableString.Invariant($"{all[0].Ingredient}: no document is as old as {asOf:d MMMM yyyy}; the first one, {all[0].Name} of {first:d MMMM yyyy}, is used.")));
            return asOf is null ? all[^1] : all[0];
        }
        // Whoever has put a new document in must not take the figures for its own.
        if (all[^1] is { Date: { } later } next && later > day)
            remarks.Add(new(next.Ingredient, FormattableString.Invariant($"{next.Ingredient}: {next.Name} of {later:d MMMM yyyy} is later than {day:d MMMM yyyy}, the day whose documents count, which is that of the last make unless another was asked for; {inTime.Name} is used.")));
        return inTime;
    }

    private static Ingredient WithFigures(Ingredient ingredient, SheetRow row, Document? document, CompositionTable table, StatedFigures stated, List<CellProblem> problems)
    {
        NutrientProfile? food = null;
        Food? record = null;
        if (ingredient.Food is { } id)
        {
            record = table.Seek(id);
            if (record is not null) food = table.Profile(record.Id);
            else problems.Add(row.Problem("food", $"a food of the composition table, dataset and number, such as SR28 01145{Near(table.Nearest(id))}"));
        }
        // What is wrong with a document was named when all of them were read.
        List<CellProblem> named = [];
        var reader = document is null ? null : new RowReader(document.Row, named);
        var profile = reader is null || food is null && !stated.IsStatedIn(reader.Row) ? food : stated.Over(food, ingredient.Name, reader);
        var figured = document is null || reader is null ? ingredient with { Profile = profile } : FunctionalData.Over(ingredient, reader) with
        {
            Profile = profile,
            Allergens = LookedAt(reader.Words("allergens")) ?? ingredient.Allergens,
            MayContain = LookedAt(reader.Words("may_contain")) ?? ingredient.MayContain,
            LabelName = document.Row["legal_name"] is { Length: > 0 } legal ? legal : ingredient.LabelName,
            SupplierList = document.Row["ingredient_list"] is { Length: > 0 } list ? list : ingredient.SupplierList,
            AdditiveList = Looked(document.Row["additives"]) ?? ingredient.AdditiveList,
            Supplier = document.Row["supplier"] is { Length: > 0 } supplier ? supplier : null,
            SulphitesMgPerKg = reader.Number("sulphites_mg_kg", 0),
        };
        // By its words only where its food states nothing: what a food is counts before what somebody calls it.
        figured = figured with { Compound = record?.Compound ?? table.CompoundWords.In(record?.Name, figured.Name, figured.LabelName) };
        return figured.Profile is { } figures ? figured with { Profile = AddedSugars.Over(figures, figured) } : figured;
    }

    // 'none' says that somebody looked; a blank says that nobody did.
    private static string? Looked(string cell) => cell.Length == 0 ? null : Names.Same(cell, "none") ? "" : cell;

    private static string Near(IReadOnlyList<string> names) => names.Count == 0 ? "" : $"; near ones: {string.Join("; ", names)}";
}
