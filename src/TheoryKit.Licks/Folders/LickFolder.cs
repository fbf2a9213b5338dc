using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics;
using TheoryKit.Licks.Search;
using TheoryKit.Values;

namespace TheoryKit.Licks.Folders;

/// <summary>
/// A folder of licks: one plain-text file each (see <see cref="Lick.Parse(string, IFormatProvider?)"/>), made to be read, compared and
/// kept under version control. What it holds is that of the moment when it was opened, with what has been saved through it since;
/// <see cref="Reload"/> looks anew.
/// </summary>
/// <remarks>
/// <para>Files: those in the folder itself that end in <see cref="Extension"/> or <see cref="TabExtension"/> and do not begin with a dot; anything else,
/// what lies in folders inside it too, is none of its business. A lick is known by the name that it says itself, whatever its file is
/// called; a file that says none has that of the file. Names are told apart by every character, those of files too where the system does. A link to
/// a file is read, and written, as that file. What is no plain file of UTF-8 text of at most <see cref="MaxFileBytes"/> bytes, and what
/// says a name that a file before it says, is listed in <see cref="Broken"/> and left alone; longer files, pipes and devices are not even
/// opened. Bytes that are not UTF-8 are not guessed at: nothing in them says which alphabet was meant, and saving would change them.</para>
/// <para>Saving: new files are UTF-8 without a mark, with line feeds, and called after the lick in small letters, digits and
/// hyphens, with a number where that is taken, if only in capitals. What is rewritten keeps its byte order mark and line ends, and
/// everything that was not changed stands as it stood. A file is written beside its place, out to the disk, and moved there in one step: at any moment there is the
/// whole old one or the whole new one. What a killed save leaves begins with a dot, is never read, and goes with the next save.</para>
/// <para>Several programs: whoever saves holds the file <c>.licks.lock</c> meanwhile (it is empty and stays; leave it out of version
/// control). A file that has changed since it was read here is not written over: saving is refused, and so is a new lick under a name
/// that someone else has saved since.</para>
/// <para>Safe on any thread. Two folders are equal when they are the same object.</para>
/// </remarks>
public sealed class LickFolder
{
    /// <summary>The extension of the files that are written: <c>.lick.txt</c>.</summary>
    public const string Extension = ".lick.txt";

    /// <summary>An extension that is read as well: <c>.tab</c>.</summary>
    public const string TabExtension = ".tab";

    /// <summary>The longest file in bytes: 1,048,576. Chosen: hundreds of pages of tab, far beyond a phrase worth keeping.</summary>
    public const int MaxFileBytes = 1 << 20;

    private const string LockName = ".licks.lock";
    private static readonly TimeSpan MostWait = TimeSpan.FromSeconds(30);

    private readonly Lock gate = new();
    private volatile View view;

    // What is known of the files on the disk, whoever wrote them; only asked when saving.
    private ImmutableSortedDictionary<string, LickFile> seen;

    private LickFolder(string directory)
    {
        Directory = directory;
        seen = Scan(ImmutableSortedDictionary.Create<string, LickFile>(StringComparer.Ordinal));
        view = new(seen);
    }

    /// <summary>The folder's full path.</summary>
    public string Directory { get; }

    /// <summary>The licks, by name.</summary>
    public IReadOnlyList<KeptLick> Licks => view.Licks;

    /// <summary>The files that could not be read, by file name, and what is wrong with each.</summary>
    public IReadOnlyList<BrokenLick> Broken => view.Broken;

    /// <summary>The lick of that name; null if there is none.</summary>
    public KeptLick? this[string name]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(name);
            return view.ByName.GetValueOrDefault(name.Trim())?.Kept;
        }
    }

    /// <summary>Opens a folder and reads its licks; makes it if there is none.</summary>
    /// <exception cref="IOException">The path is a file, or can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">Access is denied.</exception>
    public static LickFolder Open(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        return System.IO.File.Exists(path)
            ? throw new IOException(
                $"{System.IO.Path.GetFullPath(path)} is a file; expected a folder, there or to be made."
            )
            : new(System.IO.Directory.CreateDirectory(path).FullName);
    }

    /// <summary>Reads what has changed on the disk since.</summary>
    /// <exception cref="IOException">The folder is no longer there, or can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">Access is denied.</exception>
    public void Reload()
    {
        lock (gate)
        {
            // From the beginning: a file may have changed within the grain of the clock.
            seen = Scan(seen.Clear());
            view = new(seen);
        }
    }

    /// <summary>Keeps a lick: in the file of the lick of that name where there is one, else in a new file.</summary>
    /// <exception cref="IOException">The file was changed since it was read here, or another lick of that name was saved since; <see cref="Reload"/>
    /// and look at it. Or it can't be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    /// <exception cref="ArgumentException">The lick's text would not read back to it.</exception>
    public KeptLick Save(Lick lick)
    {
        ArgumentNullException.ThrowIfNull(lick);
        return SaveAll([lick])[0];
    }

    /// <summary>Keeps licks one after the other, as <see cref="Save"/> does, but looks through the folder only once.</summary>
    /// <remarks>When one is refused those before it are saved.</remarks>
    /// <exception cref="IOException">As for <see cref="Save"/>.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    /// <exception cref="ArgumentException">The text of a lick would not read back to it.</exception>
    public IReadOnlyList<KeptLick> SaveAll(IEnumerable<Lick> licks)
    {
        ArgumentNullException.ThrowIfNull(licks);
        lock (gate)
        {
            var all = licks.ToList();
            using var held = Hold();
            var (files, kept) = (view.Files.ToBuilder(), new List<KeptLick>());
            var names = view.ByName.ToDictionary(StringComparer.Ordinal);
            Dictionary<string, LickFile>? others = null;
            HashSet<string>? taken = null;
            try
            {
                foreach (var lick in all)
                {
                    var known = names.GetValueOrDefault(lick.Name);
                    if (known is not null && !IsUnchanged(known))
                    {
                        files.Remove(known.Name);
                        known = null;
                    }

                    if (known is null)
                    {
                        others ??= LookAround();
                        if (others.GetValueOrDefault(lick.Name) is { } other)
                        {
                            throw new IOException(
                                $"A lick \"{lick.Name}\" was saved in {other.Name} since this folder was read; reload and save it under another name, or over that one."
                            );
                        }
                    }

                    var file = known?.Name;
                    if (file is null)
                    {
                        file = FreeName(LickFileName.StemOf(lick.Name), taken ??= Taken());
                        taken.Add(file);
                    }

                    var written = LickFile.Write(Directory, file, lick, known);
                    files[file] = written;
                    seen = seen.SetItem(file, written);
                    names[lick.Name] = written;
                    kept.Add(written.Kept!);
                }
            }
            finally
            {
                view = new(files.ToImmutable(), view);
            }

            return kept;
        }
    }

    /// <summary>Gives a lick another name, and its file the one that belongs to it.</summary>
    /// <param name="name">The lick's name.</param>
    /// <param name="newName">Its new name.</param>
    /// <exception cref="ArgumentException">There is no lick of that name, there is one of the new name, or the new name is none.</exception>
    /// <exception cref="IOException">The file was changed since it was read here, a lick of the new name was saved since, or it can't be written.</exception>
    public KeptLick Rename(string name, string newName)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(newName);
        lock (gate)
        {
            var known =
                view.ByName.GetValueOrDefault(name.Trim())
                ?? throw new ArgumentException($"There is no lick \"{name}\" in {Directory}.", nameof(name));
            var lick = known.Kept!.Lick with { Name = newName };
            if (lick.Name == known.Kept.Lick.Name)
            {
                return known.Kept;
            }

            if (view.ByName.ContainsKey(lick.Name))
            {
                throw new ArgumentException($"There is a lick \"{lick.Name}\" already.", nameof(newName));
            }

            using var held = Hold();
            if (!IsUnchanged(known))
            {
                throw new IOException($"{known.Name} is gone from {Directory}; reload the folder.");
            }

            if (LookAround().GetValueOrDefault(lick.Name) is { } other)
            {
                throw new IOException(
                    $"A lick \"{lick.Name}\" was saved in {other.Name} since this folder was read; reload the folder."
                );
            }

            // The name first, then the file: in between, a file called after the old name holds the new one, which is no harm.
            var written = LickFile.Write(Directory, known.Name, lick, known);
            var file = FreeName(LickFileName.StemOf(lick.Name), Taken());
            if (LickFileName.StemOf(lick.Name) != LickFileName.StemOfFile(known.Name))
            {
                File.Move(PathOf(known.Name), PathOf(file));
                written = LickFile.Read(new FileInfo(PathOf(file))) ?? written;
            }

            seen = seen.Remove(known.Name).SetItem(written.Name, written);
            view = new(view.Files.Remove(known.Name).SetItem(written.Name, written), view);
            return written.Kept!;
        }
    }

    /// <summary>Removes a lick and its file.</summary>
    /// <returns>Whether there was one of that name.</returns>
    /// <exception cref="IOException">The file was changed since it was read here, or can't be deleted.</exception>
    public bool Delete(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        lock (gate)
        {
            if (view.ByName.GetValueOrDefault(name.Trim()) is not { } known)
            {
                return false;
            }

            using var held = Hold();
            if (IsUnchanged(known))
            {
                File.Delete(PathOf(known.Name));
            }

            seen = seen.Remove(known.Name);
            view = new(view.Files.Remove(known.Name), view);
            return true;
        }
    }

    /// <summary>The licks that answer a query, the best first, those that answer as well by name.</summary>
    /// <exception cref="ArgumentException">The query asks for licks like one that is not in the folder.</exception>
    public IReadOnlyList<FoundLick> Find(LickQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        var now = view;
        return LickSearch.Find(now.Licks, now.Facts, query, name => now.ByName.GetValueOrDefault(name)?.Kept?.Lick);
    }

    /// <summary>The licks that answer a query as <see cref="LickQuery.Parse(string, IFormatProvider?)"/> reads it.</summary>
    /// <exception cref="FormatException">The text is not a query.</exception>
    /// <exception cref="ArgumentException">The query asks for licks like one that is not in the folder.</exception>
    public IReadOnlyList<FoundLick> Find(string query) => Find(LickQuery.Parse(Check.NotNull(query)));

    /// <summary>Licks that are the same but for key and register, then those that are nearly; by likeness, then by name.</summary>
    /// <param name="least">How alike they must at least be, above 0 and at most 1; see <see cref="Likeness"/>. 0.8 unless told.</param>
    /// <remarks>
    /// Licks belong together if a chain of pairs leads from one to the other in which each is alike enough. Not every two are compared:
    /// near ones are looked for among those which share runs of three steps, in semitones or in letters, so many of them
    /// as the likeness asked leaves. Short ones, of less than four notes, are found only where they are the same.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Another likeness.</exception>
    public IReadOnlyList<SimilarLicks> Duplicates(double least = 0.8)
    {
        if (!(least > 0 && least <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(least), least, "A likeness is above 0 and at most 1.");
        }

        var now = view;
        return LickDuplicates.Find(now.Licks, now.Facts, least);
    }

    /// <summary>The folder's path.</summary>
    public override string ToString() => Directory;

    private string PathOf(string file) => System.IO.Path.Combine(Directory, file);

    /// <summary>The files of licks as they are now; of those that look as they did nothing is read.</summary>
    private ImmutableSortedDictionary<string, LickFile> Scan(ImmutableSortedDictionary<string, LickFile> known)
    {
        var infos = new DirectoryInfo(Directory)
            .EnumerateFileSystemInfos("*", new EnumerationOptions { AttributesToSkip = 0, IgnoreInaccessible = false })
            .Where(static info => LickFileName.IsLick(info.Name))
            .ToArray();
        var files = new LickFile?[infos.Length];
        Parallel.For(
            0,
            infos.Length,
            index =>
            {
                var before = known.GetValueOrDefault(infos[index].Name);
                files[index] =
                    before is not null && before.LooksLike(infos[index]) ? before : LickFile.Read(infos[index]);
            }
        );
        return files
            .OfType<LickFile>()
            .ToImmutableSortedDictionary(static file => file.Name, static file => file, StringComparer.Ordinal);
    }

    /// <summary>Who else's licks there are now, by name. Takes away what killed saves have left: whoever asks holds the folder, so no save is under way.</summary>
    private Dictionary<string, LickFile> LookAround()
    {
        foreach (var path in System.IO.Directory.EnumerateFiles(Directory, ".*"))
        {
            if (LickFile.IsLeftOver(System.IO.Path.GetFileName(path)))
            {
                File.Delete(path);
            }
        }

        seen = Scan(seen);
        var names = new Dictionary<string, LickFile>(StringComparer.Ordinal);
        foreach (var file in seen.Values.Where(static file => file.Kept is not null))
        {
            names.TryAdd(file.Kept!.Lick.Name, file);
        }

        return names;
    }

    /// <summary>Whether a file is still there, as it was read.</summary>
    /// <exception cref="IOException">It has changed.</exception>
    private bool IsUnchanged(LickFile known)
    {
        if (LickFile.Read(new FileInfo(PathOf(known.Name))) is not { } now)
        {
            return false;
        }

        return now.IsSameAs(known)
            ? true
            : throw new IOException(
                $"{known.Name} was changed since this folder was read; reload, look at it, and save again."
            );
    }

    /// <summary>The names of files as a system sees them that does not tell small letters from capitals: whoever opens the folder there finds all.</summary>
    private HashSet<string> Taken() => new(seen.Keys, StringComparer.OrdinalIgnoreCase);

    private string FreeName(string stem, HashSet<string> taken)
    {
        var file = $"{stem}{Extension}";
        for (var number = 2; taken.Contains(file) || System.IO.Path.Exists(PathOf(file)); number++)
        {
            file = $"{stem}-{number}{Extension}";
        }

        return file;
    }

    /// <summary>Keeps other programs from saving until it is let go, by the system too when this one is killed.</summary>
    private FileStream Hold()
    {
        var waited = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                return new(
                    PathOf(LockName),
                    FileMode.OpenOrCreate,
                    FileAccess.ReadWrite,
                    FileShare.None,
                    bufferSize: 0
                );
            }
            catch (IOException exception)
                when (exception is not (DirectoryNotFoundException or FileNotFoundException)
                    && waited.Elapsed < MostWait
                )
            {
                Thread.Sleep(Random.Shared.Next(1, 8));
            }
        }
    }

    /// <summary>What the folder holds at a moment; never changes but for what is worked out on first use.</summary>
    private sealed class View
    {
        private readonly Lazy<LickFacts[]> facts;

        public View(ImmutableSortedDictionary<string, LickFile> files, View? before = null)
        {
            Files = files;
            var names = new Dictionary<string, LickFile>(StringComparer.Ordinal);
            var broken = ImmutableArray.CreateBuilder<BrokenLick>();
            foreach (var file in files.Values)
            {
                if (file.Kept is not { } kept)
                {
                    broken.Add(file.Broken!);
                }
                else if (!names.TryAdd(kept.Lick.Name, file))
                {
                    broken.Add(
                        new(file.Name, LickFault.NameTaken, file.NameLine)
                        {
                            Name = kept.Lick.Name,
                            Other = names[kept.Lick.Name].Name,
                        }
                    );
                }
            }

            ByName = names.ToFrozenDictionary(StringComparer.Ordinal);
            Broken = broken.ToImmutable();
            Licks =
            [
                .. names
                    .Values.Select(static file => file.Kept!)
                    .OrderBy(static kept => kept.Lick.Name, StringComparer.OrdinalIgnoreCase)
                    .ThenBy(static kept => kept.Lick.Name, StringComparer.Ordinal),
            ];
            facts = new(() => Index(before));
        }

        public ImmutableSortedDictionary<string, LickFile> Files { get; }

        public FrozenDictionary<string, LickFile> ByName { get; }

        public ImmutableArray<KeptLick> Licks { get; }

        public ImmutableArray<BrokenLick> Broken { get; }

        /// <summary>What searches ask, for each of the licks.</summary>
        public LickFacts[] Facts => facts.Value;

        private LickFacts[] Index(View? before)
        {
            var known = new Dictionary<KeptLick, LickFacts>(ReferenceEqualityComparer.Instance);
            if (before is { facts.IsValueCreated: true })
            {
                for (var index = 0; index < before.Licks.Length; index++)
                {
                    known[before.Licks[index]] = before.Facts[index];
                }
            }

            var all = new LickFacts[Licks.Length];
            Parallel.For(
                0,
                all.Length,
                index => all[index] = known.GetValueOrDefault(Licks[index]) ?? new LickFacts(Licks[index].Lick)
            );
            return all;
        }
    }
}
