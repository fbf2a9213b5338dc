namespace TheoryKit.Licks.Folders;

/// <summary>Why a file of a lick folder is none of its licks.</summary>
public enum LickFault
{
    /// <summary>Its text is not that of a lick.</summary>
    Text,

    /// <summary>There is no text in it, only blanks and line ends.</summary>
    Blank,

    /// <summary>Its bytes are not UTF-8.</summary>
    NotUtf8,

    /// <summary>It has a byte that is 0, which no text has.</summary>
    NotText,

    /// <summary>It is longer than <see cref="LickFolder.MaxFileBytes"/>. It was not read.</summary>
    TooLong,

    /// <summary>
    /// The system says that it has no bytes: it is an empty file, or a pipe, a socket or a device, which say the same. It was not opened.
    /// </summary>
    NoBytes,

    /// <summary>It is a pipe or a device that took the place of a file. Nothing was read from it.</summary>
    NoFile,

    /// <summary>It is a folder, or a link to one.</summary>
    Folder,

    /// <summary>It is a link that leads to no file, or round in a circle.</summary>
    DeadLink,

    /// <summary>It may not be read.</summary>
    Denied,

    /// <summary>The system could not open or read it.</summary>
    Unopened,

    /// <summary>Another file, earlier in order, says the same name of a lick.</summary>
    NameTaken,
}
