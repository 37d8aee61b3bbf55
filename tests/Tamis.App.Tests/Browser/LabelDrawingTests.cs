using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Tamis.Desserts;
using Tamis.Labels;
using Tamis.Views;

namespace Tamis.App.Tests.Browser;

/// <summary>Labels for print, measured in a real browser at their real size.</summary>
public sealed partial class LabelDrawingTests : IAsyncLifetime
{
    // CSS: an inch is 96 px, 72 pt and 25.4 mm.
    private const double PixelsPerMillimetre = 96 / 25.4;
    private const double PointsPerMillimetre = 72 / 25.4;

    private static readonly Dessert Loaf = Dessert.Open(KitFolder.Data("desserts/travel-loaf"));

    private IPlaywright? _playwright;
    private IBrowser _browser = null!;

    // Every way of drawing a panel; what is missing from the demo's figures does not change what is measured here.
    public static IEnumerable<LabelDrawing> Finished => OnOneFace.Concat(OfOneColumn).Concat(OnSeveralFaces).Concat(OfTwoColumns).Concat(OfCanada);

    private static IEnumerable<LabelDrawing> OnOneFace =>
        from each in new[]
        {
            ("V1", "IE", "185 x 75 x 65"), ("V1", "IE; FR; DE", "185 x 75 x 65"), ("V1", "IE", "105 x 75 x 20"), ("V1b", "GB", "70 x 45 x 30"), ("V1", "AU", "185 x 75 x 65"),
            ("V1", "US", "150 x 130 x 60"), ("V1", "US", "185 x 75 x 65"), ("V1", "US", "95 x 80 x 10"), ("V2", "CA", "150 x 130 x 60"), ("V2", "CA", "190 x 80 x 60"),
        }
        select LabelDrawing.Of(DessertLabel.ContentOf(Loaf, each.Item1, each.Item2) with { Pack = PackShape.Parse(each.Item3)!, DraftReasons = [] });

    // A face of 3 in and more that has no room for the upright panel: the footnote at the side of it, or the panel on its side.
    private static IReadOnlyList<LabelDrawing> OfOneColumn { get; } = [Wafer("180 x 100 x 80", "net_g,150\nportion_g,30"), Wafer("180 x 90 x 80", "net_g,150\nportion_g,30")];

    private static IEnumerable<LabelDrawing> OnSeveralFaces =>
        from market in new[] { "IE", "IE; FR; DE", "AU" }
        let content = DessertLabel.ContentOf(Loaf, market == "AU" ? "V1" : "V1b", market) with { DraftReasons = [] }
        from face in PackFace.Spread(content, [new(content.Pack, ["name", "net quantity"]), new(content.Pack.OnFace(65, 75)!, ["panel"]), new(content.Pack.OnFace(185, 65)!, ["rest"])])
        select LabelDrawing.Of(face);

    // A package of 250 % of its reference amount, by itself and as units of a larger one, upright and on its side, whole and short; and a small package, which needs no second column.
    private static IReadOnlyList<LabelDrawing> OfTwoColumns { get; } = [.. from each in new[]
        {
            ("150 x 130 x 60", "net_g,75\nportion_g,15"), ("290 x 75 x 60", "net_g,75\nportion_g,15"), ("180 x 115 x 80", "net_g,75\nportion_g,15"), ("150 x 130 x 60", "net_g,75\nportion_g,15\npanel_form,short"), ("150 x 130 x 60", "net_g,150\nportion_g,75"), ("95 x 80 x 10", "net_g,75\nportion_g,15"),
        }
        select Wafer(each.Item1, each.Item2)];

    // The list in its border, on white and on a coloured pack; two other amounts, large and small; and a front that keeps the place of its symbol, marked and blank.
    private static IReadOnlyList<LabelDrawing> OfCanada { get; } = [.. from each in new[]
        {
            ("185 x 130 x 60", "#ffffff", ""), ("185 x 130 x 60", "#e8d9b0", ""), ("260 x 60 x 60", "#ffffff", ""), ("185 x 150 x 60", "#ffffff", "other_amount,2 slices; 80\nother_amount,1 cake; 320"), ("215 x 85 x 60", "#e8d9b0", "other_amount,1 cake; 320"),
            ("185 x 130 x 60", "#ffffff", "symbol"), ("185 x 130 x 60", "#ffffff", "symbol_artwork,6BH.eps"),
        }
        select Cake(each.Item1, each.Item2, each.Item3)];

    private static LabelDrawing Cake(string box, string ground, string rows)
    {
        using ScratchFolder scratch = new();
        scratch.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\nsalt,SR28 02047,none,salt\nsugar,SR28 19335,none,sugar\n");
        scratch.Write("store/words.csv", "word,fr\nwhole wheat flour,farine de blé entier\nsalt,sel\nsugar,sucre\nFlour cake,gâteau de farine\nslice,tranche\nslices,tranches\ncake,gâteau\n");
        scratch.Write("trials.csv", "trial,parent,made_on\nT1,,2026-11-01\n");
        scratch.Write("6BH.eps", "stands for the authority's artwork");
        scratch.Write("formula.csv", "component,line,T1\ncake,flour,240\ncake,salt,4\ncake,sugar,156\n");
        scratch.Write("dessert.csv", $"key,value\nname,Flour cake\nportion_word,slice\nportion_g,40\nnet_g,320\nreference_amount_g,80\nmarket,CA; CA; en\nmarket,CA; CA; fr\nform_of_sale,prepacked\nbusiness,\"A bakery, Town\"\nlot,L 1\nbox_mm,{box}\nground_colour,{ground}\n{(rows == "symbol" ? "" : rows)}\n");
        var content = DessertLabel.ContentOf(Dessert.Open(scratch.Path), "T1", "CA") with { DraftReasons = [] };
        return LabelDrawing.Of(rows.StartsWith("symbol", StringComparison.Ordinal) ? content : content with { Symbol = null });
    }

    private static LabelDrawing Wafer(string box, string rows)
    {
        using ScratchFolder scratch = new();
        scratch.Write("store/ingredients.csv", "ingredient,food,allergens,label_name\nflour,SR28 20080,wheat,whole wheat flour\nsalt,SR28 02047,none,salt\n");
        scratch.Write("formula.csv", "component,line,T1\nwafer,flour,97\nwafer,salt,3\n");
        scratch.Write("dessert.csv", $"key,value\nname,Flour wafer\nportion_word,wafer\nserving_category,cookies\nmarket,US; US; en\nform_of_sale,prepacked\nbusiness,\"A bakery, Town\"\nlot,L 1\nbox_mm,{box}\n{rows}\n");
        return DessertLabel.Drawn(Dessert.Open(scratch.Path), "T1", "US");
    }

    public async Task InitializeAsync()
    {
        if (BrowserFactAttribute.Path is not { } program) return;
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = ["--no-sandbox"] });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    // Annex IV of Regulation (EU) No 1169/2011: the x-height is the height of a small x without serifs, ascenders or descenders.
    [BrowserFact]
    public async Task Label_InABrowser_HasItsSizesItsOrderAndNothingOverNothing()
    {
        await using var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = 1000, Height = 500 }, Offline = true });
        var page = await context.NewPageAsync();
        foreach (var drawing in Finished)
        {
            await page.SetContentAsync(LabelPrint.Page(drawing));
            var measured = await MeasureAsync(page);
            var where = $"{drawing.Content.Rules.Name}, {drawing.Layout.InWords}";
            Assert.Equal(drawing.WidthMillimetres, measured.WidthMillimetres, 2);
            Assert.Equal(drawing.HeightMillimetres, measured.HeightMillimetres, 2);
            var sizes = drawing.Sizes.ToDictionary(size => $"part-{size.Part.Replace(' ', '-')}", size => size);
            Assert.NotEmpty(measured.Texts);
            foreach (var text in measured.Texts)
            {
                var rule = sizes[text.Part].Rule;
                var (height, what) = rule.Unit switch { "mm x-height" => (text.XHeight, "small x"), "pt" => (text.Size * PointsPerMillimetre, "type size"), _ => (text.Figure, "figure") };
                Assert.True(height >= rule.Number - 0.005, $"{where}: the {what} of '{text.Content}' is {height:0.000}, asked for are {rule}");
                Assert.True(text is { Left: >= 0, Top: >= 0 } && text.Right <= drawing.WidthMillimetres && text.Bottom <= drawing.HeightMillimetres, $"{where}: '{text.Content}' leaves the face");
                // The widths that the kit knows are those of the face that the browser took.
                Assert.True(Math.Abs(text.NaturalWidth - text.Width) <= 0.01 * text.Width + 0.02, $"{where}: '{text.Content}' is {text.NaturalWidth:0.00} mm wide by itself and {text.Width:0.00} mm as it is set");
            }
            for (var one = 0; one < measured.Texts.Count; one++)
                for (var other = one + 1; other < measured.Texts.Count; other++)
                    Assert.False(Overlap(measured.Texts[one], measured.Texts[other]), $"{where}: '{measured.Texts[one].Content}' and '{measured.Texts[other].Content}' overlap");
            Assert.Equal(drawing.Marks.OfType<TextMark>().Select(mark => mark.Text), measured.Texts.Select(text => text.Content));
        }
    }

    // 21 CFR 101.9(d)(1)(iii), (e): the second column in type as large as the first, its figures on its own edges, and upright lines between.
    [BrowserFact]
    public async Task Label_InABrowser_TheSecondColumnIsAsLargeAsTheFirstAndPartedFromIt()
    {
        await using var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = 1200, Height = 600 }, Offline = true });
        var page = await context.NewPageAsync();
        foreach (var drawing in OfTwoColumns.Where(drawing => !drawing.Layout.IsWithoutSecondColumn))
        {
            await page.SetContentAsync(LabelPrint.Page(drawing));
            var measured = await MeasureAsync(page);
            var upright = measured.Bars.Where(bar => bar.Height > 10 * bar.Width).OrderBy(bar => bar.Left).ToArray();
            foreach (var (part, points) in new[] { ("part-column-head", 8.0), ("part-energy-figure", 22), ("part-percent-head", 6) })
            {
                Text[] texts = [.. measured.Texts.Where(text => text.Part == part)];
                Assert.True(texts.Length > 0 && texts.Length % 2 == 0, $"{part}: {texts.Length}");
                Assert.All(texts, text => Assert.Equal(points, text.Size * PointsPerMillimetre, 2));
                foreach (var line in texts.GroupBy(text => Math.Round(text.Bottom, 1)))
                    Assert.All(line.OrderBy(text => text.Left).Zip(line.OrderBy(text => text.Left).Skip(1)), pair =>
                        Assert.Contains(upright, bar => bar.Left > pair.First.Right && bar.Left + bar.Width < pair.Second.Left && bar.Top <= pair.First.Top + 0.01 && bar.Top + bar.Height >= pair.First.Bottom - 0.01));
            }
            Assert.All(upright, bar => Assert.Equal(0.25, bar.Width * PointsPerMillimetre, 0.003));
            // The percentages of a column end where its head ends.
            double[] ends = [.. measured.Texts.Where(text => text.Part == "part-percent-head").Select(text => text.Right)];
            Text[] percents = [.. measured.Texts.Where(text => text.Part is "part-nutrient" or "part-vitamin" && text.Content.EndsWith('%'))];
            Assert.True(percents.Length >= 12);
            Assert.All(percents, text => Assert.Contains(ends, end => Math.Abs(end - text.Right) < 0.02));
        }
    }

    // Food and Drug Regulations (C.R.C., c. 870), B.01.008.1(1)(b), B.01.008.2(2), B.01.355(2): the list stands within its border and touches it nowhere; nothing stands on the place of the symbol or in the room around it.
    [BrowserFact]
    public async Task Label_InABrowser_ListsStandClearOfTheirBordersAndTheSymbolHasItsRoom()
    {
        await using var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = 1200, Height = 700 }, Offline = true });
        var page = await context.NewPageAsync();
        foreach (var drawing in OfCanada)
        {
            await page.SetContentAsync(LabelPrint.Page(drawing));
            var measured = await MeasureAsync(page);
            Text[] list = [.. measured.Texts.Where(text => text.Part is "part-list" or "part-contains")];
            Frame[] borders = [.. measured.Frames.Where(frame => list.Any(frame.Holds))];
            Assert.Equal(2, borders.Length);
            Assert.All(borders, border => Assert.Equal(0.5, border.Line * PointsPerMillimetre, 0.01));
            Assert.All(list, text => Assert.Single(borders, border => border.Holds(text) && border.GapTo(text) > 0.1));
            Assert.All(measured.Texts.Except(list), text => Assert.DoesNotContain(borders, border => border.Touches(text)));
            Assert.Equal(["Ingredients:", "Contains:", "Ingrédients\u00a0:", "Contient\u00a0:"], list.Where(text => text.Weight >= 700).Select(text => text.Content.Trim()));
            Assert.Single(list.Select(text => Math.Round(text.XHeight, 3)).Distinct());
            var isOwn = drawing.Content.Colours.Ground != LabelColours.BlackOnWhite.Ground;
            Assert.Equal(isOwn ? 3 : 0, measured.Frames.Count(frame => frame.Kind == "part-ground"));
            Assert.All(measured.Frames.Where(frame => frame.Kind == "part-ground"), ground => Assert.Equal("rgb(255, 255, 255)", ground.Fill));
            Assert.All(list, text => Assert.Equal("rgb(0, 0, 0)", text.Fill));
            if (drawing.SymbolPlace is not { } place) continue;
            var (room, marked) = (1.5, measured.Frames.Where(frame => frame.Kind == "reserve").ToArray());
            Assert.Equal(drawing.Content.Symbol!.HasArtwork ? 0 : 1, marked.Length);
            Assert.All(marked, each => Assert.Equal((36, 18.9), (Math.Round(each.Width, 2), Math.Round(each.Height, 2))));
            Frame free = new("", place.XMillimetres - room, place.YMillimetres - room, 36 + 2 * room, 18.9 + 2 * room, 0, "");
            Assert.All(measured.Texts.Where(text => text.Part != "part-reserve"), text => Assert.False(free.Touches(text), text.Content));
            Assert.True(place.XMillimetres >= drawing.WidthMillimetres / 2 && free.Left + free.Width <= drawing.WidthMillimetres);
        }
    }

    // The pixels themselves: rows of ink of an x that is set as the list of ingredients is, ten dots to a pixel of CSS.
    [BrowserFact]
    public async Task Label_InABrowser_AnXIsAsHighAsTheArticleAsksAndBlackOnWhite()
    {
        const int dots = 10;
        var drawing = DessertLabel.Drawn(Loaf, "V1b", "IE");
        await using var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = 800, Height = 400 }, DeviceScaleFactor = dots, Offline = true });
        var page = await context.NewPageAsync();
        await page.SetContentAsync(LabelPrint.Page(drawing));
        await page.EvaluateAsync("""
            () => {
              const list = document.querySelector('.part-list'), x = list.cloneNode();
              x.textContent = 'x'; x.removeAttribute('textLength'); x.setAttribute('x', 20); x.setAttribute('y', 20);
              document.querySelector('.label-print').replaceChildren(x);
            }
            """);
        var picture = await page.ScreenshotAsync(new() { Clip = new() { X = 60, Y = 60, Width = 40, Height = 40 } });
        var ink = await page.EvaluateAsync<JsonElement>("""
            async source => {
              const image = new Image(); image.src = 'data:image/png;base64,' + source; await image.decode();
              const canvas = new OffscreenCanvas(image.width, image.height), context = canvas.getContext('2d');
              context.drawImage(image, 0, 0);
              const dots = context.getImageData(0, 0, image.width, image.height).data;
              let rows = 0, darkest = 255, lightest = 0;
              for (let y = 0; y < image.height; y++) {
                let black = false;
                for (let x = 0; x < image.width; x++) {
                  const red = dots[4 * (y * image.width + x)];
                  darkest = Math.min(darkest, red); lightest = Math.max(lightest, red); black ||= red < 128;
                }
                if (black) rows++;
              }
              return { rows, darkest, lightest };
            }
            """, Convert.ToBase64String(picture));

        var height = ink.GetProperty("rows").GetInt32() / (dots * PixelsPerMillimetre);
        Assert.InRange(height, 1.2 - 1 / (dots * PixelsPerMillimetre), 1.3);
        byte darkest = ink.GetProperty("darkest").GetByte(), lightest = ink.GetProperty("lightest").GetByte();
        Assert.True(new LabelColours(new(darkest, darkest, darkest), new(lightest, lightest, lightest)).ContrastRatio >= drawing.ContrastRule!.Number);
    }

    [BrowserFact]
    public async Task Label_AsPdf_IsOnePageOfTheSizeOfTheFaceWithItsFaceEmbedded()
    {
        await using var context = await _browser.NewContextAsync(new() { Offline = true });
        var page = await context.NewPageAsync();
        foreach (var drawing in Finished)
        {
            await page.SetContentAsync(LabelPrint.Page(drawing));
            var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true }));
            // ISO 32000-1, 7.7.3: page objects and their MediaBox in points; 9.9: embedded font programs.
            Assert.Single(PageObject().Matches(pdf));
            var box = MediaBox().Match(pdf).Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray();
            Assert.Equal(drawing.WidthMillimetres, (box[2] - box[0]) / PointsPerMillimetre, 0.5);
            Assert.Equal(drawing.HeightMillimetres, (box[3] - box[1]) / PointsPerMillimetre, 0.5);
            Assert.Contains("/FontFile", pdf, StringComparison.Ordinal);
        }
    }

    private static async Task<Measured> MeasureAsync(IPage page)
    {
        var json = await page.EvaluateAsync<string>("""
            () => {
              const svg = document.querySelector('svg'), box = svg.getBoundingClientRect(), mm = 96 / 25.4, large = 1000;
              const context = document.createElement('canvas').getContext('2d');
              context.fontKerning = 'none';
              const texts = [...document.querySelectorAll('.label-print text')].map(text => {
                const style = getComputedStyle(text), size = parseFloat(style.fontSize), scale = size / large;
                context.font = `${style.fontWeight} ${large}px ${style.fontFamily}`;
                const own = context.measureText(text.textContent), x = text.x.baseVal[0].value, y = text.y.baseVal[0].value;
                return {
                  text: text.textContent, part: text.getAttribute('class'), size, weight: parseInt(style.fontWeight), fill: style.fill,
                  xHeight: context.measureText('x').actualBoundingBoxAscent * scale, figure: context.measureText('1').actualBoundingBoxAscent * scale,
                  naturalWidth: own.width * scale, width: text.getEndPositionOfChar(text.getNumberOfChars() - 1).x - x,
                  left: x, right: text.getEndPositionOfChar(text.textContent.trimEnd().length - 1).x, top: y - own.actualBoundingBoxAscent * scale, bottom: y + own.actualBoundingBoxDescent * scale,
                };
              });
              const bars = [...document.querySelectorAll('.label-print rect:not(.frame, .part-ground, .reserve)')].map(bar => bar.getBBox()).map(bar => ({ left: bar.x, top: bar.y, width: bar.width, height: bar.height }));
              const frames = [...document.querySelectorAll('.label-print rect.frame, .label-print rect.part-ground, .label-print rect.reserve')].map(frame => {
                const own = frame.getBBox(), style = getComputedStyle(frame);
                return { kind: frame.getAttribute('class'), left: own.x, top: own.y, width: own.width, height: own.height, line: style.stroke === 'none' ? 0 : parseFloat(style.strokeWidth), fill: style.fill };
              });
              return JSON.stringify({ widthMillimetres: box.width / mm, heightMillimetres: box.height / mm, texts, bars, frames });
            }
            """);
        return JsonSerializer.Deserialize<Measured>(json, JsonSerializerOptions.Web)!;
    }

    private static bool Overlap(Text one, Text other) =>
        Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left) > 0.01 && Math.Min(one.Bottom, other.Bottom) - Math.Max(one.Top, other.Top) > 0.01;

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex PageObject();

    [GeneratedRegex(@"/MediaBox\s*\[([0-9. ]+)\]")]
    private static partial Regex MediaBox();

    private sealed record Measured(double WidthMillimetres, double HeightMillimetres, IReadOnlyList<Text> Texts, IReadOnlyList<Bar> Bars, IReadOnlyList<Frame> Frames);

    // All in mm; the edges are those of the middle of its line.
    private sealed record Frame(string Kind, double Left, double Top, double Width, double Height, double Line, string Fill)
    {
        public bool Holds(Text text) => Kind == "frame" && GapTo(text) >= 0;

        // From the ink of the text to that of the line.
        public double GapTo(Text text) => new[] { text.Left - Left, Left + Width - text.Right, text.Top - Top, Top + Height - text.Bottom }.Min() - Line / 2;

        public bool Touches(Text text) => Math.Min(Left + Width, text.Right) - Math.Max(Left, text.Left) > 0.01 && Math.Min(Top + Height, text.Bottom) - Math.Max(Top, text.Top) > 0.01;
    }

    // All in mm.
    private sealed record Bar(double Left, double Top, double Width, double Height);

    // All in mm.
    private sealed record Text(string Part, double Size, double Weight, string Fill, double XHeight, double Figure, double NaturalWidth, double Width, double Left, double Right, double Top, double Bottom)
    {
        [System.Text.Json.Serialization.JsonPropertyName("text")]
        public required string Content { get; init; }
    }
}
