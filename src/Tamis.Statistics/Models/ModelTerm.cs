namespace Tamis.Statistics.Models;

/// <summary>One column of the data as a model uses it: itself, or a power of it.</summary>
/// <param name="Column">The column's name.</param>
/// <param name="Power">1, or the power of <c>I(x^2)</c>.</param>
public readonly record struct ModelVariable(string Column, int Power = 1)
{
    /// <summary>The variable as the model writes it.</summary>
    public override string ToString() => Power == 1 ? Column : $"I({Column}^{Power})";
}

/// <summary>A main effect or an interaction: the product of one or more variables, whose order does not matter.</summary>
public sealed class ModelTerm : IEquatable<ModelTerm>
{
    private readonly HashSet<ModelVariable> _set;

    /// <summary>Makes a term; a variable that comes twice counts once.</summary>
    public ModelTerm(IEnumerable<ModelVariable> variables)
    {
        Variables = [.. variables.Distinct()];
        _set = [.. Variables];
    }

    /// <summary>The variables, in the order in which the model first wrote them.</summary>
    public IReadOnlyList<ModelVariable> Variables { get; }

    /// <summary>The term of both terms' variables.</summary>
    public ModelTerm With(ModelTerm other) => new(Variables.Concat(other.Variables));

    /// <summary>The term that is left when one variable is taken out.</summary>
    public ModelTerm Without(ModelVariable variable) => new(Variables.Where(one => one != variable));

    /// <inheritdoc/>
    public bool Equals(ModelTerm? other) => other is not null && _set.SetEquals(other._set);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ModelTerm);

    /// <inheritdoc/>
    public override int GetHashCode() => _set.Aggregate(0, (hash, variable) => hash ^ variable.GetHashCode());

    /// <summary>The term as the expanded model writes it, <c>recipe:temperature</c>.</summary>
    public override string ToString() => string.Join(':', Variables);
}
