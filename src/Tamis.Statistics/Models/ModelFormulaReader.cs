using System.Globalization;

namespace Tamis.Statistics.Models;

/// <summary>Reads a model from left to right: sums of products of interactions of variables.</summary>
internal sealed class ModelFormulaReader(string text)
{
    // The intercept travels as the term without variables.
    private static readonly ModelTerm Intercept = new([]);

    private int _at;

    public ModelFormula Read()
    {
        var response = Name();
        Expect('~');
        var terms = Sum([Intercept]);
        if (Peek() != '\0') throw Unexpected("+, -, * or :");
        return new(response, terms.Contains(Intercept), terms.Where(term => !term.Equals(Intercept)));
    }

    private List<ModelTerm> Sum(List<ModelTerm> start)
    {
        List<ModelTerm> terms = [.. start];
        var takeAway = Take('-');
        if (!takeAway) Take('+');
        while (true)
        {
            if (Take('0'))
                Apply([Intercept], !takeAway);
            else
                Apply(Product(), takeAway);
            if (Take('+')) takeAway = false;
            else if (Take('-')) takeAway = true;
            else return terms;
        }

        void Apply(List<ModelTerm> change, bool remove)
        {
            if (remove) terms.RemoveAll(change.Contains);
            else terms.AddRange(change.Where(term => !terms.Contains(term)));
        }
    }

    private List<ModelTerm> Product()
    {
        var left = Interaction();
        while (Take('*'))
        {
            var right = Interaction();
            left = [.. left.Concat(right).Concat(Crossed(left, right)).Distinct()];
        }
        return left;
    }

    private List<ModelTerm> Interaction()
    {
        var left = Variable();
        while (Take(':')) left = [.. Crossed(left, Variable())];
        return left;
    }

    private static IEnumerable<ModelTerm> Crossed(List<ModelTerm> left, List<ModelTerm> right) =>
        from one in left from other in right select one.With(other);

    private List<ModelTerm> Variable()
    {
        if (Take('1')) return [Intercept];
        if (Take('('))
        {
            var inside = Sum([]);
            if (Peek() == '|') throw new FormatException($"The model '{text}' has a random term; a linear model by least squares has none.");
            Expect(')');
            return inside;
        }
        var name = Name();
        if (name != "I" || !Take('(')) return [new([new(name)])];
        var column = Name();
        Expect('^');
        var power = WholeNumber();
        Expect(')');
        return [new([new(column, power)])];
    }

    private string Name()
    {
        if (Take('`'))
        {
            var end = text.IndexOf('`', _at);
            if (end <= _at) throw Unexpected("a column name and a closing back-tick");
            var quoted = text[_at..end];
            _at = end + 1;
            return quoted;
        }
        if (!char.IsLetter(Peek())) throw Unexpected("a column name");
        var start = _at;
        while (_at < text.Length && (char.IsLetterOrDigit(text[_at]) || text[_at] is '_' or '.')) _at++;
        return text[start.._at];
    }

    private int WholeNumber()
    {
        Peek();
        var start = _at;
        while (_at < text.Length && char.IsAsciiDigit(text[_at])) _at++;
        return int.TryParse(text.AsSpan(start, _at - start), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0
            ? number
            : throw Unexpected("a whole power such as 2");
    }

    private char Peek()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at])) _at++;
        return _at < text.Length ? text[_at] : '\0';
    }

    private bool Take(char wanted)
    {
        if (Peek() != wanted) return false;
        _at++;
        return true;
    }

    private void Expect(char wanted)
    {
        if (!Take(wanted)) throw Unexpected($"'{wanted}'");
    }

    private FormatException Unexpected(string expected) =>
        new($"The model '{text}' cannot be read: at {(_at < text.Length ? $"'{text[_at..]}'" : "its end")} expected {expected}.");
}
