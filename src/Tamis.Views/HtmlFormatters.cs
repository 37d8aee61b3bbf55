namespace Tamis.Views;

/// <summary>Something that a page or a notebook shows.</summary>
public interface IView
{
    /// <summary>It as markup.</summary>
    Html ToHtml();
}

/// <summary>Tells a notebook host, which looks for an attribute of this name, how a type shows itself.</summary>
/// <remarks>The host finds it by name, so that the kit needs no reference to any host.</remarks>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct)]
internal sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    public Type FormatterSourceType { get; } = formatterSourceType;

    public string[] PreferredMimeTypes { get; set; } = [];
}

/// <summary>Where a host asks for the formatters of a type. The member has the name that a host looks for.</summary>
internal interface IFormatterSource
{
    IEnumerable<object> CreateTypeFormatters();
}

/// <summary>The two ways in which a view shows itself in a notebook: as HTML and, where a host shows none, as plain text.</summary>
internal sealed class ViewFormatters<T> : IFormatterSource where T : IView
{
    public IEnumerable<object> CreateTypeFormatters() =>
    [
        new ViewFormatter<T>("text/html", html => NotebookSetup.Framed(html).Markup),
        new ViewFormatter<T>("text/plain", html => html.ToPlainText()),
    ];
}

/// <summary>One way in which a view shows itself. Its members have the names that a host looks for.</summary>
internal sealed class ViewFormatter<T>(string mimeType, Func<Html, string> write) where T : IView
{
    public string MimeType { get; } = mimeType;

    public Type Type { get; } = typeof(T);

    public bool Format(object instance, TextWriter writer)
    {
        if (instance is not T view) return false;
        writer.Write(write(view.ToHtml()));
        return true;
    }
}
