namespace TheoryKit.Cli.Running;

/// <summary>A notebook that does what no notebook should.</summary>
/// <param name="Name">What it does.</param>
/// <param name="Cells">Its cells after the first, which shows "begun".</param>
/// <param name="Fates">What may become of it, a part of the page's text; none where the page is whole.</param>
internal sealed record HostileNotebook(string Name, string[] Cells, params string[] Fates)
{
    /// <summary>Whether it spoils what other notebooks of the same print need.</summary>
    public bool IsAlone { get; init; }

    private const string Ended = "ended the notebook's process";
    private const string Late = "took too long";
    private const string Failed = "failed";

    private const string Native = """
        using System.Runtime.InteropServices;
        [DllImport("libc")] static extern int kill(int id, int signal);
        [DllImport("libc")] static extern int close(int file);
        [DllImport("libc")] static extern int getpid();
        [DllImport("libc")] static extern nint write(int file, byte[] bytes, nint count);
        [DllImport("libc")] static extern nint memset(nint at, int value, nint count);

        """;

    /// <summary>Kinds of notebooks and variations of each: at least 200.</summary>
    /// <param name="pages">The folder of the pages of one that is alone.</param>
    public static IEnumerable<HostileNotebook> All(string pages) =>
        Kinds(pages)
            .SelectMany(static kind => kind.Value.Select((each, i) => each with { Name = $"{kind.Key}-{i + 1:00}" }));

    /// <summary>One of each of the kinds that differ most.</summary>
    public static IEnumerable<HostileNotebook> Few(string pages)
    {
        var kinds = Kinds(pages);
        string[] names =
        [
            "exit",
            "fail-fast",
            "overflow",
            "loop",
            "thread",
            "stays",
            "flood",
            "closed",
            "deleted",
            "grandchild",
            "killed",
            "memory",
            "rubbish",
            "async-void",
            "long-html",
        ];
        return names.Select(name => kinds[name][0] with { Name = name });
    }

    private static Dictionary<string, List<HostileNotebook>> Kinds(string pages)
    {
        var kinds = new Dictionary<string, List<HostileNotebook>>(StringComparer.Ordinal);
        Add(
            "exit",
            [0, 1, 2, 3, 7, 42, 127, 128, 134, 137, 139, 255, 256, -1],
            static i => $"Environment.Exit({i});",
            Ended
        );
        Add(
            "exit-elsewhere",
            [
                "new Thread(() => Environment.Exit(3)).Start(); Thread.Sleep(-1);",
                "await Task.Run(() => Environment.Exit(4));",
                "AppDomain.CurrentDomain.ProcessExit += (_, _) => Environment.Exit(5); Environment.Exit(6);",
                "System.Diagnostics.Process.GetCurrentProcess().Kill(); Thread.Sleep(-1);",
                "System.Diagnostics.Process.GetCurrentProcess().Kill(true); Thread.Sleep(-1);",
            ],
            static code => code,
            Ended,
            Failed,
            Late,
            Failed
        );
        Add(
            "fail-fast",
            ["\"kestrel\"", "null", "\"\"", "new string('x', 100000)", "\"a\\nb\\0c\""],
            static text => $"Environment.FailFast({text});",
            Ended
        );
        Add(
            "overflow",
            [
                "int Down(int n) => Down(n + 1) + 1; Down(0);",
                "int One(int n) => Two(n + 1) + 1; int Two(int n) => One(n + 1) + 1; One(0);",
                "Func<int, int> down = null; down = n => down(n) + 1; down(0);",
                "var thread = new Thread(() => { int Down(int n) => Down(n + 1) + 1; Down(0); }); thread.Start(); thread.Join();",
                "await Task.Run(() => { int Down(int n) => Down(n + 1) + 1; return Down(0); });",
                "class Loop { public override string ToString() => ToString() + \"x\"; }\nnew Loop().ToString()",
                "class Ring { public override int GetHashCode() => new Ring().GetHashCode() + 1; }\nnew HashSet<Ring> { new Ring() }",
                "unsafe static void Fill() { var big = stackalloc byte[100_000_000]; big[0] = 1; big[99_999_999] = 1; System.Console.Write(big[5]); }\nFill();",
            ],
            static code => code,
            Ended,
            Failed
        );
        Add(
            "loop",
            [
                "while (true) { }",
                "for (var i = 0L; ; i++) { if (i < 0) { Console.WriteLine(i); } }",
                "Thread.Sleep(-1);",
                "await Task.Delay(-1);",
                "new ManualResetEvent(false).WaitOne();",
                "await new TaskCompletionSource().Task;",
                "for (; ; ) { GC.Collect(); }",
                "lock (typeof(string)) { var other = new Thread(() => { lock (typeof(string)) { } }); other.Start(); other.Join(); }",
                "Parallel.For(0, 64, _ => { while (true) { } });",
                "while (true) { try { throw new Exception(); } catch { } }",
                "while (true) { await Task.Yield(); }",
                "new Thread(() => { while (true) { } }).Start(); while (true) { Thread.SpinWait(100); }",
            ],
            static code => code,
            Late
        );
        Add(
            "thread",
            [
                "new Thread(() => throw new InvalidOperationException(\"tin boats\")).Start(); Thread.Sleep(-1);",
                "ThreadPool.QueueUserWorkItem(_ => throw new Exception(\"tin boats\")); Thread.Sleep(-1);",
                "new Timer(_ => throw new Exception(\"tin boats\"), null, 10, -1); Thread.Sleep(-1);",
                "var t = new Thread(() => { int[] a = null; a[0] = 1; }); t.Start(); Thread.Sleep(-1);",
                "class Last { ~Last() => throw new Exception(\"tin boats\"); }\nvoid Make() { for (var i = 0; i < 100; i++) { new Last(); } }\nMake(); GC.Collect(); GC.WaitForPendingFinalizers(); Thread.Sleep(-1);",
                "ThreadPool.UnsafeQueueUserWorkItem(_ => throw null, null); await Task.Delay(-1);",
            ],
            static code => code,
            Ended
        );
        Add(
            "stays",
            [
                "new Thread(() => Thread.Sleep(-1)).Start();",
                "for (var i = 0; i < 50; i++) { new Thread(() => Thread.Sleep(-1)).Start(); }",
                "new Thread(() => { while (true) { } }).Start();",
                "AppDomain.CurrentDomain.ProcessExit += (_, _) => Thread.Sleep(-1);",
                "AppDomain.CurrentDomain.ProcessExit += (_, _) => throw new Exception();",
                "AppDomain.CurrentDomain.ProcessExit += (_, _) => { while (true) { } };",
                "System.Runtime.InteropServices.PosixSignalRegistration.Create(System.Runtime.InteropServices.PosixSignal.SIGTERM, c => c.Cancel = true);",
            ],
            static code => code
        );
        Add(
            "unawaited",
            [
                "_ = Task.Run(() => { while (true) { } });",
                "_ = Task.Run(() => throw new Exception());",
                "_ = Task.Run(async () => { while (true) { await Task.Delay(1); } });",
                "_ = Task.Delay(-1);",
            ],
            static code => code
        );
        Add(
            "unawaited-crowd",
            [100, 1000],
            static n => $"for (var i = 0; i < {n}; i++) {{ _ = Task.Run(() => Thread.Sleep(-1)); }}",
            "",
            Late
        );
        Add(
            "async-void",
            [
                "async void Later() { await Task.Delay(10); throw new Exception(\"row\"); }\nLater(); Thread.Sleep(-1);",
                "async void Later() { await Task.Yield(); throw new Exception(\"row\"); }\nLater(); await Task.Delay(-1);",
                "Action later = async () => { await Task.Delay(1); throw new Exception(\"row\"); };\nlater(); Thread.Sleep(-1);",
                "async void Now() { throw new Exception(\"row\"); }\nNow(); Thread.Sleep(-1);",
            ],
            static code => code,
            Ended,
            Failed
        );
        Add(
            "flood",
            [
                "var line = new string('x', 99); for (var i = 0; i < 1_000_000; i++) { Console.WriteLine(line); }",
                "Console.Write(new string('x', 100_000_000));",
                "var line = new string('<', 9_999); for (var i = 0; i < 10_000; i++) { Console.Error.WriteLine(line); }",
                "for (var i = 0; i < 20; i++) { Console.Write(new string('&', 5_000_000)); }",
                "Parallel.For(0, 8, _ => { for (var i = 0; i < 100; i++) { Console.WriteLine(new string('y', 100_000)); } });",
                "for (var i = 0; i < 30; i++) { Console.Write(new string('a', 1_000_000)); Console.Error.Write(new string('b', 1_000_000)); }",
            ],
            static code => code,
            "Left out here",
            Late
        );
        Add(
            "flood-of-errors",
            [100_000, 50_000_000],
            static n => $"throw new Exception(new string('x', {n}));",
            Failed
        );
        Add(
            "many-outputs",
            [
                "for (var i = 0; i < 20_000; i++) { display(i); }",
                "for (var i = 0; i < 20_000; i++) { Console.Write(1); Console.Error.Write(2); }",
                "for (var i = 0; i < 20_000; i++) { display(HTML(\"<b>x</b>\")); }",
                "while (true) { display(\"x\"); }",
                "while (true) { Console.Write('x'); }",
                "for (var i = 0; i < 3_000; i++) { display(i).Update(\"changed\"); }",
            ],
            static code => code,
            "Left out here",
            Late
        );
        Add(
            "many-updates",
            ["var shown = display(0); for (var i = 0; i < 5_000; i++) { shown.Update(i); }"],
            static code => code
        );
        Add(
            "long-html",
            [9, 20, 60, 200],
            static n => $"display(HTML(new string('<', {n}_000_000)));",
            "Left out here",
            Failed
        );
        Add("long-value", [10_000_000, 100_000_000], static n => $"new string('y', {n})", "Left out here", Failed);
        Add(
            "odd-html",
            [
                "\"</div></main></body></html>\"",
                "\"<!--\"",
                "\"<script>while (true) { }</script>\"",
                "new string('<', 100_000)",
                "\"<plaintext>\"",
                "string.Concat(Enumerable.Repeat(\"<div>\", 100_000))",
            ],
            static code => $"display(HTML({code}));"
        );
        Add(
            "odd-markdown",
            [
                "new string('>', 100_000)",
                "new string('[', 49_000)",
                "new string('*', 49_000)",
                "string.Concat(Enumerable.Repeat(\"- \", 100_000))",
                "new string('[', 1_000_001)",
                "string.Concat(Enumerable.Repeat(\"![](\", 10_000))",
                "string.Concat(Enumerable.Repeat(\"|a\", 20_000))",
            ],
            static text =>
                "var now = Microsoft.DotNet.Interactive.KernelInvocationContext.Current; "
                + $"Microsoft.DotNet.Interactive.KernelInvocationContextExtensions.DisplayAs(now, {text}, \"text/markdown\");"
        );
        Add(
            "closed",
            [
                "Console.OpenStandardOutput().Close(); Console.OpenStandardError().Close();",
                "Console.Out.Close(); Console.Error.Close();",
                Native + "close(0); close(1); close(2);",
                "Console.SetOut(TextWriter.Null); Console.SetError(TextWriter.Null);",
                "Console.SetOut(null);",
                "Console.In.Close(); Console.ReadLine()",
            ],
            static code => code,
            "",
            Failed
        );
        Add(
            "closed-channel",
            [
                Native + "for (var i = 3; i < 5000; i++) { close(i); } Thread.Sleep(-1);",
                Native + "for (var i = 5000; i >= 0; i--) { close(i); } Thread.Sleep(-1);",
                Native
                    + "new Thread(() => { while (true) { for (var i = 3; i < 500; i++) { close(i); } } }).Start(); while (true) { Console.Write(1); }",
            ],
            static code => code,
            Ended,
            Late
        );
        Add(
            "spoilt-channel",
            [
                "new byte[] { 255, 255, 255, 127 }",
                "new byte[] { 0, 0, 0, 0 }",
                "new byte[] { 1, 0, 0, 0, 99 }",
                "new byte[1_000_000]",
                "System.Text.Encoding.UTF8.GetBytes(\"GET / HTTP/1.1\")",
                "Enumerable.Range(0, 4096).Select(i => (byte)(i * 31)).ToArray()",
            ],
            static bytes =>
                Native
                + "foreach (var link in Directory.GetFiles(\"/proc/self/fd\")) { if (File.ResolveLinkTarget(link, false)?.Name.Contains(\"socket\") == true) "
                + $"{{ var rubbish = {bytes}; write(int.Parse(Path.GetFileName(link)), rubbish, rubbish.Length); }} }} Thread.Sleep(-1);",
            Ended,
            Late
        );
        Add(
            "deleted",
            [
                "Directory.Delete(Environment.CurrentDirectory, true);",
                "Environment.CurrentDirectory = Directory.CreateTempSubdirectory().FullName; Directory.Delete(Environment.CurrentDirectory);",
                $"foreach (var file in Directory.GetFiles({Text(pages)})) {{ try {{ File.Delete(file); }} catch (IOException) {{ }} }}",
                $"try {{ Directory.Delete({Text(pages)}, true); }} catch (IOException) {{ }}",
                "Environment.CurrentDirectory = \"/\";",
                "Environment.CurrentDirectory = \"/proc/self\";",
            ],
            static code => code
        );
        Add(
            "grandchild",
            [
                "System.Diagnostics.Process.Start(\"sleep\", \"7001\");",
                "System.Diagnostics.Process.Start(\"sh\", [\"-c\", \"sleep 7001 & sleep 7001\"]);",
                "System.Diagnostics.Process.Start(\"sh\", [\"-c\", \"trap '' TERM HUP INT; sleep 7001 & exit\"]).WaitForExit();",
                "System.Diagnostics.Process.Start(\"setsid\", [\"sleep\", \"7001\"]);",
                "System.Diagnostics.Process.Start(\"setsid\", [\"-f\", \"sleep\", \"7001\"]).WaitForExit();",
                "System.Diagnostics.Process.Start(\"nohup\", [\"sh\", \"-c\", \"setsid sh -c 'sleep 7001 & sleep 7001' & sleep 7001\"]);",
                "System.Diagnostics.Process.Start(\"env\", [\"-i\", \"setsid\", \"-f\", \"sleep\", \"7001\"]).WaitForExit();",
                "System.Diagnostics.Process.Start(\"env\", [\"-i\", \"sh\", \"-c\", \"setsid sh -c 'setsid sleep 7001 & sleep 7001' & exit\"]).WaitForExit();",
                "for (var i = 0; i < 40; i++) { System.Diagnostics.Process.Start(\"sh\", [\"-c\", \"sleep 7001 & sleep 7001\"]); }",
                "System.Diagnostics.Process.Start(\"sh\", [\"-c\", \"while :; do sleep 0.01; done\"]);",
            ],
            static code => code
        );
        Add(
            "grandchild-and-end",
            [
                "System.Diagnostics.Process.Start(\"sleep\", \"7001\"); Environment.Exit(1);",
                "System.Diagnostics.Process.Start(\"setsid\", [\"-f\", \"sleep\", \"7001\"]).WaitForExit(); Environment.FailFast(null);",
                "System.Diagnostics.Process.Start(\"env\", [\"-i\", \"setsid\", \"-f\", \"sleep\", \"7001\"]).WaitForExit(); Environment.Exit(0);",
                "System.Diagnostics.Process.Start(\"sleep\", \"7001\").WaitForExit();",
                "System.Diagnostics.Process.Start(\"sh\", [\"-c\", $\"kill -9 {Environment.ProcessId}; sleep 7001\"]).WaitForExit();",
            ],
            static code => code,
            Ended,
            Late
        );
        Add(
            "killed",
            [9, 11, 6, 4, 8, 7, 15, 1, 2, 3, 31],
            static n => Native + $"kill(getpid(), {n}); Thread.Sleep(-1);",
            Ended,
            Late
        );
        Add("group-killed", [9, 15, 2], static n => Native + $"kill(0, {n}); Thread.Sleep(-1);", Ended, Late);
        Add("halted", [19], static n => Native + $"kill(getpid(), {n}); Thread.Sleep(-1);", Late);
        Add(
            "memory",
            [
                "var all = new List<byte[]>(); while (true) { all.Add(new byte[10_000_000]); }",
                "var all = new List<string>(); while (true) { all.Add(new string('x', 1000)); }",
                "var text = \"xx\"; while (true) { text += text; }",
                "var all = new List<object>(); while (true) { all.Add(new object()); }",
                "new byte[int.MaxValue / 2]",
                "Enumerable.Range(0, int.MaxValue).Select(i => new int[1000]).ToList()",
            ],
            static code => code,
            Failed,
            Ended,
            Late
        );
        Add("wild", ["0", "8", "-1"], static at => Native + $"memset((nint){at}, 1, 100000);", Ended, Failed);
        Add(
            "no-compile",
            [
                new string('(', 20_000) + "1" + new string(')', 20_000),
                string.Join(" + ", Enumerable.Repeat("1", 50_000)),
                string.Concat(Enumerable.Repeat("{", 20_000)),
                string.Concat(Enumerable.Repeat("if (true) ", 20_000)) + ";",
                "#r \"nuget:Gannet.Row.Of.Nothing, 1.0.0\"",
                "#r \"/nowhere/at/all.dll\"",
                "#!nowhere\n1",
                "\0\u0001\u0002",
            ],
            static code => code,
            "",
            Failed,
            Ended,
            Late
        );
        Add(
            "slow-compile",
            [6, 8],
            static n =>
                "using System;\nstatic class M { public static T F<T>(Func<int, T> f) => default; public static T F<T>(Func<string, T> f) => default; public static T F<T>(Func<double, T> f) => default; }\n"
                + "var x = "
                + string.Concat(Enumerable.Range(0, n).Select(static i => $"M.F(a{i} => "))
                + "1"
                + new string(')', n)
                + ";",
            Failed,
            Late,
            Ended
        );
        Add(
            "rubbish",
            [
                "var noise = new byte[1_000_000]; new Random(1).NextBytes(noise); Console.OpenStandardOutput().Write(noise);",
                "var noise = new byte[1_000_000]; new Random(2).NextBytes(noise); Console.OpenStandardError().Write(noise);",
                "Console.OpenStandardOutput().Write(new byte[5_000_000]);",
                "Console.OpenStandardError().Write(\"\\u001b[2J\\u001b]0;mine\\u0007\"u8);",
                "Console.Write(\"\\0\\u0001\\ud800 \\udc00\\uffff\\u001b[31m\");",
                "display(\"\\ud83d\"); Console.Write('\\ud83d'); Console.Write('\\ude00');",
            ],
            static code => code
        );
        Add(
            "odd-value",
            [
                "class Sour { public override string ToString() => throw new Exception(\"sour\"); }\nnew Sour()",
                "class Sour { public int Bars => throw new Exception(\"sour\"); }\nnew Sour()",
                "class Ring { public Ring Next { get; set; } }\nvar ring = new Ring(); ring.Next = ring; ring",
                "IEnumerable<int> Forever() { for (var i = 0; ; i++) { yield return i; } }\nForever()",
                "class Bad : Exception { public override string Message => throw new Exception(\"sour\"); }\nthrow new Bad();",
                "class Bad : Exception { public override string StackTrace => throw new Exception(\"sour\"); }\nthrow new Bad();",
                "Microsoft.DotNet.Interactive.Formatting.Formatter.Register<int>((n, w) => throw new Exception(\"sour\"));\n5",
                "throw null;",
                "Span<int> three = stackalloc int[3]; three[3]",
            ],
            static code => code,
            "",
            Failed,
            Ended
        );
        Add(
            "input",
            ["Console.ReadLine()", "Console.In.ReadToEnd()", "Console.Read()", "Console.ReadKey()"],
            static code => code,
            "",
            Failed
        );
        Add(
            "starved",
            [
                "ThreadPool.SetMaxThreads(2, 2); for (var i = 0; i < 100; i++) { ThreadPool.QueueUserWorkItem(_ => Thread.Sleep(-1)); } Thread.Sleep(-1);",
                "for (var i = 0; i < 200; i++) { ThreadPool.QueueUserWorkItem(_ => Thread.Sleep(-1)); } await Task.Delay(-1);",
                "Thread.CurrentThread.Priority = ThreadPriority.Highest; for (var i = 0; i < 8; i++) { new Thread(() => { while (true) { } }).Start(); } while (true) { }",
            ],
            static code => code,
            Late
        );
        Add(
            "settings",
            [
                "System.Globalization.CultureInfo.DefaultThreadCurrentCulture = System.Globalization.CultureInfo.GetCultureInfo(\"de-DE\");",
                "foreach (System.Collections.DictionaryEntry each in Environment.GetEnvironmentVariables()) { Environment.SetEnvironmentVariable((string)each.Key, null); }",
                "System.Runtime.GCSettings.LatencyMode = System.Runtime.GCLatencyMode.SustainedLowLatency; GC.TryStartNoGCRegion(1_000_000);",
                "Microsoft.DotNet.Interactive.Formatting.Formatter.ResetToDefault(); 1.5",
                "Microsoft.DotNet.Interactive.Kernel.Root.Dispose();",
                "Microsoft.DotNet.Interactive.KernelInvocationContext.Current.Complete(Microsoft.DotNet.Interactive.KernelInvocationContext.Current.Command);",
            ],
            static code => code,
            "",
            Failed,
            Late,
            Ended
        );
        Add(
            "text-cell",
            [
                "# " + new string('>', 20_000),
                "# a\n\n" + new string('>', 20_000),
                "# a\n\n" + new string('[', 100_000),
                "# a\n\n" + string.Concat(Enumerable.Repeat("- ", 20_000)),
            ],
            static text => text
        );
        kinds["deleted"] = [.. kinds["deleted"].Select(static each => each with { IsAlone = true })];
        return kinds;

        void Add<T>(string kind, IEnumerable<T> variations, Func<T, string> code, params string[] fates) =>
            kinds.Add(kind, [.. variations.Select(each => new HostileNotebook(kind, [code(each)], fates))]);
    }

    private static string Text(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal)}\"";
}
