namespace Tamis.Statistics.Models;

/// <summary>A linear model in Wilkinson–Rogers notation (Applied Statistics 22, 1973): <c>y ~ a * b + I(x^2)</c>.</summary>
/// <remarks>
/// <c>a:b</c> is an interaction, <c>a * b</c> is <c>a + b + a:b</c>, <c>0</c> or <c>- 1</c> leaves out the intercept,
/// <c>- a:b</c> leaves out a term, brackets group, and a column whose name holds blanks stands in back-ticks.
/// </remarks>
public sealed class ModelFormula
{
    internal ModelFormula(string response, bool hasIntercept, IEnumerable<ModelTerm> terms)
    {
        Response = response;
        HasIntercept = hasIntercept;
        // A stable sort: main effects before interactions, otherwise as written.
        Terms = [.. terms.Distinct().OrderBy(term => term.Variables.Count)];
    }

    /// <summary>The column that the model explains.</summary>
    public string Response { get; }

    /// <summary>Whether the model has an intercept.</summary>
    public bool HasIntercept { get; }

    /// <summary>The expanded terms without the intercept, main effects before interactions, otherwise in the order of the text.</summary>
    public IReadOnlyList<ModelTerm> Terms { get; }

    /// <summary>All columns that the model names, the response first.</summary>
    public IEnumerable<string> Columns => Terms.SelectMany(term => term.Variables).Select(variable => variable.Column).Prepend(Response).Distinct();

    /// <summary>Reads a model.</summary>
    /// <exception cref="FormatException">The text is no linear model; the message says where it stops making sense.</exception>
    public static ModelFormula Parse(string text) => new ModelFormulaReader(text).Read();

    /// <summary>The expanded model.</summary>
    public override string ToString() =>
        $"{Response} ~ {string.Join(" + ", Terms.Select(term => term.ToString()).Prepend(HasIntercept ? "1" : "0"))}";
}
